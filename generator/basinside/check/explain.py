"""The page of a rule or of a problem of form, as authors read it."""

from __future__ import annotations

from typing import Final

from basinside.check.form_pages import FORM_PAGES
from basinside.check.registry import RULE_BY_ID
from basinside.problem import Level

FORM_IDS: Final[tuple[str, ...]] = tuple(FORM_PAGES)
"""The ids of problems that no rule finds; no waiver takes one away."""

_SAYS: Final[dict[Level, str]] = {
    Level.INFO: "for information",
    Level.WARN: "warns; an explained one is no warning",
    Level.STOP: "stops the build; two people can waive it for a while",
    Level.NEVER: "stops the build; cannot be waived",
}
_FORM_WARNS: Final = frozenset({"waiver-ended", "waiver-without-effect"})


def explain(rule_id: str) -> str | None:
    """Return the author's page for an id, with its level, or None when there is no such id."""
    rule = RULE_BY_ID.get(rule_id)
    if rule is not None:
        return f"{rule.id} ({_SAYS[rule.level]})\n\n{rule.page}\n"
    page = FORM_PAGES.get(rule_id)
    if page is None:
        return None
    level = Level.WARN if rule_id in _FORM_WARNS else Level.NEVER
    return f"{rule_id} ({_SAYS[level]})\n\n{page}\n"


def all_ids() -> tuple[str, ...]:
    """Return every id that has a page: the rules in their order, then the problems of form."""
    return (*RULE_BY_ID, *FORM_IDS)
