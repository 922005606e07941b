"""The rule ranges-overlap."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import combinations
from typing import Final

from basinside.check.checked import Checked
from basinside.check.option_numbers import numbers_in
from basinside.check.rule import Finding, rule
from basinside.problem import Level

_DIGIT: Final = re.compile(r"[0-9]")


@rule(level=Level.STOP)
def check_ranges_overlap(checked: Checked) -> Iterator[Finding]:
    """No number is in the ranges of two options.

    Why: 20 min is “at least 10 min” as well as “at least 20 min”. Whoever chooses either can be
    right.
    Bad: 5 to 10 min, and 10 to 20 min.
    Good: 5 to 9 min, and 10 to 20 min.
    Source: Haladyna, Downing and Rodriguez, A review of multiple-choice item-writing guidelines,
    2002, guideline 22.
    """
    words = checked.item_words
    for read in checked.items:
        if read.in_figures < 2:
            continue
        ranges = [
            (each, found)
            for each in read.options
            if (found := numbers_in(each.text, words)) is not None
        ]
        for (one, first), (other, second) in combinations(ranges, 2):
            if (first.single and second.single) or not first.meets(second):
                continue
            yield Finding(
                other.option.place,
                f"“{other.text}” and “{one.text}” of {read.name} overlap",
                "Let one begin where the other has ended.",
                (read.item.place,),
            )
