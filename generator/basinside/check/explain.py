"""The page of a rule or of a problem of form, as authors read it."""

from __future__ import annotations

from typing import Final, NamedTuple

from basinside.check.form_pages import FORM_PAGES
from basinside.check.registry import RULE_BY_ID, RULES
from basinside.problem import Level

FORM_IDS: Final[tuple[str, ...]] = tuple(FORM_PAGES)
"""The ids of problems that no rule finds; no waiver takes one away."""

_SAYS: Final[dict[Level, str]] = {
    Level.INFO: "for information",
    Level.WARN: "warns; an explained one is no warning",
    Level.STOP: "stops the build; two people can waive it for a while",
    Level.NEVER: "stops the build; cannot be waived",
}
_OF_WAIVERS: Final[dict[str, tuple[Level, str]]] = {
    "waiver-ended": (Level.STOP, "stops when the day is given; decide again or mend"),
    "waiver-without-effect": (Level.WARN, _SAYS[Level.WARN]),
}
"""Problems of waivers that are no mistakes of form: they have a level of their own."""


class RuleLine(NamedTuple):
    """An id in the list of all: its level, whether it needs a day, and what it says."""

    id: str
    level: Level
    dated: bool
    says: str


def explain(rule_id: str) -> str | None:
    """Return the author's page for an id, with its level, or None when there is no such id."""
    rule = RULE_BY_ID.get(rule_id)
    if rule is not None:
        dated = "; only with --today" if rule.dated else ""
        return f"{rule.id} ({_SAYS[rule.level]}{dated})\n\n{rule.page}\n"
    page = FORM_PAGES.get(rule_id)
    if page is None:
        return None
    _, says = _form_level(rule_id)
    return f"{rule_id} ({says})\n\n{page}\n"


def rule_lines() -> tuple[RuleLine, ...]:
    """Return every id with its level and what it says: rules in their order, then form."""
    rules = (RuleLine(each.id, each.level, each.dated, _first(each.page)) for each in RULES)
    forms = (
        RuleLine(name, _form_level(name)[0], name == "waiver-ended", _first(page))
        for name, page in FORM_PAGES.items()
    )
    return (*rules, *forms)


def _form_level(rule_id: str) -> tuple[Level, str]:
    return _OF_WAIVERS.get(rule_id, (Level.NEVER, _SAYS[Level.NEVER]))


def _first(page: str) -> str:
    """Return the first sentence of a page, which may take two lines."""
    return " ".join(page.partition("\n\n")[0].split())


def all_ids() -> tuple[str, ...]:
    """Return every id that has a page: the rules in their order, then the problems of form."""
    return (*RULE_BY_ID, *FORM_IDS)
