"""Every rule as a card for the handbook's own pages, made from the page that authors read."""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from basinside.check.explain import rule_lines
from basinside.check.form_pages import FORM_PAGES
from basinside.check.registry import RULE_BY_ID
from basinside.check.rule import Rule
from basinside.model.rule_card import RuleCard
from basinside.problem import Level

FORM: Final = "form"
"""The group of what no rule finds: problems of form, of files and of waivers."""
_RULES: Final = "basinside.check.rules."
_PART: Final = re.compile(r"^(Why|Bad|Good|Source): ?", re.MULTILINE)


@cache
def rule_cards() -> tuple[RuleCard, ...]:
    """Return every id that has a page: the rules in their order, then the problems of form."""
    return tuple(
        _card(each.id, each.level, dated=each.dated, says=each.says) for each in rule_lines()
    )


def _card(name: str, level: Level, *, dated: bool, says: str) -> RuleCard:
    rule = RULE_BY_ID.get(name)
    group, page = (_group(rule), rule.page) if rule else (FORM, FORM_PAGES[name])
    more, *parts = _PART.split(page.partition("\n\n")[2])
    told = {
        word: " ".join(text.split()) for word, text in zip(parts[::2], parts[1::2], strict=True)
    }
    return RuleCard(
        rule=name,
        group=group,
        level=level,
        dated=dated,
        says=says,
        more=" ".join(more.split()),
        why=told.get("Why", ""),
        bad=told.get("Bad", ""),
        good=told.get("Good", ""),
        source=told.get("Source", ""),
    )


def _group(rule: Rule) -> str:
    """Return the folder a rule's file lies in."""
    return rule.check.__module__.removeprefix(_RULES).partition(".")[0]
