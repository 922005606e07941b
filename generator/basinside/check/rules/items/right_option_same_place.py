"""The rule right-option-same-place."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.item_texts import ReadItem
from basinside.check.rule import Finding, rule
from basinside.problem import Level
from basinside.science.chance import chi_square, chi_square_at_least

_BY_CHANCE: Final = 0.01
_FEWEST: Final = 20
_LONGEST_RUN: Final = 4


@rule(level=Level.WARN)
def check_right_option_same_place(checked: Checked) -> Iterator[Finding]:
    """Over all practice items the right option stands in each place about as often.

    Counted among choices with the same number of options, from 20 on: it asks when the counts
    would be so uneven by chance in fewer than 1 of 100 handbooks (chi-square), and when more than
    four in a row of one file have it in the same place. Forms mix their options and are not asked.
    Why: without a script, and in the file, options stand as they were written. Writers hide the
    right one in the middle, and readers guess that.
    Bad: of 20 right options 12 stand first.
    Good: the right one stands now first, now last, as a die falls.
    Source: Attali and Bar-Hillel, Guess where, 2003; Haladyna, Downing and Rodriguez, A review of
    multiple-choice item-writing guidelines, 2002, guideline 20.
    """
    groups: dict[int, list[tuple[int, ReadItem]]] = {}
    before, run = ("", -1), 0
    for read in checked.items:
        if read.pool != "practice" or len(read.right) != 1 or len(read.options) < 2:
            continue

        place = 0
        while not read.options[place].is_right:
            place += 1
        now = (read.topic, place)
        groups.setdefault(len(read.options), []).append((place, read))
        run = run + 1 if now == before else 1
        before = now
        if run == _LONGEST_RUN + 1:
            yield Finding(
                read.right[0].option.place,
                f"the right option stands in place {now[1] + 1} for the {run}th time in a row in"
                f" {read.name}",
                "Move it.",
                (read.item.place,),
            )
    for options, found in groups.items():
        counts = [0] * options
        for place, _ in found:
            counts[place] += 1
        if len(found) < _FEWEST:
            continue
        if chi_square_at_least(chi_square(counts), options - 1) < _BY_CHANCE:
            most = counts.index(max(counts))
            first = next(read for place, read in found if place == most)
            yield Finding(
                first.right[0].option.place,
                f"of {len(found)} practice choices with {options} options the right one stands in"
                f" place {most + 1} in {counts[most]}; about {round(len(found) / options)} would be"
                " even",
                "Move right options, beginning here.",
                (first.item.place,),
            )
