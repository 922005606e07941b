"""The sheet on which judges say how hard each item is, from which a cut is worked out."""

from __future__ import annotations

from basinside.model.entry import Count, Day, Entry, Id, Mapping, Percent, Text


class Judge(Entry):
    """One judge, by role and never by name.

    ``ratings``: of 100 people who are just able enough, how many would have the item right.
    """

    role: Text
    ratings: Mapping[Id, Percent]


class Standard(Entry):
    """What judges expect of an assessment; ``version`` is the one that they rated."""

    standard: Id
    version: Count
    on: Day
    judges: tuple[Judge, ...]
