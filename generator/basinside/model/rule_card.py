"""A rule as people read it: what it asks, why, a bad and a good example, and who says so."""

from __future__ import annotations

from dataclasses import dataclass

from basinside.problem import Level


@dataclass(frozen=True, slots=True, kw_only=True)
class RuleCard:
    """The page of one rule, in its parts; what it does not say is empty.

    ``group`` says what it is about (``steam``, ``items``, ``form``); ``dated`` whether it is asked
    only when the day is given. ``says`` is one sentence, ``more`` what else it means. Words
    between grave accents are what an author types.
    """

    rule: str
    group: str
    level: Level
    dated: bool
    says: str
    more: str = ""
    why: str = ""
    bad: str = ""
    good: str = ""
    source: str = ""
