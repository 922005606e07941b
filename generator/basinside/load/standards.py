"""Whether the judges of a standard have rated the same items, and are enough to say anything."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.model.standard import Standard
from basinside.problem import Level, Place, Problem

FEWEST: Final = 2
"""One judge, or one item, says nothing about how sure a cut is."""


def rated_alike(standard: Standard) -> Iterator[Problem]:
    """Yield what does not agree on one sheet."""
    judges = standard.judges
    if len(judges) < FEWEST:
        said = "one judge alone says nothing about how sure a cut is; write two or more"
        yield _problem(standard.place.at("judges"), "bad-value", said)
    items = dict.fromkeys(item for judge in judges for item in judge.ratings)
    if len(items) < FEWEST:
        said = "a cut needs two items or more that were rated"
        yield _problem(standard.place.at("judges"), "bad-value", said)
    for n, judge in enumerate(judges, 1):
        missing = [item for item in items if item not in judge.ratings]
        if missing:
            listed = ", ".join(missing[:3]) + (" and others" if len(missing) > 3 else "")
            said = f"judge {n} ({judge.role}) has not rated {listed}"
            hint = "Each judge rates each item; take an item out for all, or ask this one."
            yield _problem(judge.place.at("ratings"), "missing-key", said, hint)


def _problem(place: Place, rule: str, message: str, hint: str = "") -> Problem:
    return Problem(place=place, rule=rule, level=Level.NEVER, message=message, hint=hint)
