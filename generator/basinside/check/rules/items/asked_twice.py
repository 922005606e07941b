"""The rule asked-twice."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.near_twins import near_twins, overlap
from basinside.check.rule import Finding, rule
from basinside.problem import Level

_SHARE: Final = 0.8


@rule(level=Level.WARN)
def check_asked_twice(checked: Checked) -> Iterator[Finding]:
    """No two items ask nearly the same: situation and stem share at most four words of five.

    Items of one scenario share its situation, and their stems alone are compared. Of many that are
    alike each is compared with the first.
    Why: who was asked in practice knows the answer by heart, and a form with both asks one thing
    and counts it twice.
    Bad: two items that differ in “two” and “three”.
    Good: one of them; or another situation.
    Source: Haladyna, Downing and Rodriguez, A review of multiple-choice item-writing guidelines,
    2002, guideline 4.
    """
    items = checked.items
    texts = [(*read.situation_words, *read.stem_words) for read in items]

    def fits(one: int, other: int) -> bool:
        first, second = items[one], items[other]
        if not first.scenario or first.scenario != second.scenario:
            return True
        return overlap(first.stem_words, second.stem_words) > _SHARE

    for earlier, later in near_twins(texts, _SHARE, fits):
        one, other = items[earlier], items[later]
        if one.name == other.name:
            continue  # repeated-id tells of it
        yield Finding(
            other.item.place.at("stem"),
            f"{other.name} asks nearly the same as {one.name}",
            "Delete one of them, or ask in another situation.",
            (other.item.place, one.item.place),
        )
