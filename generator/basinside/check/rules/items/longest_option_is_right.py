"""The rule longest-option-is-right."""

from __future__ import annotations

from collections.abc import Iterator
from statistics import median
from typing import Final

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level

_TIMES: Final = 1.5
_LETTERS_MORE: Final = 15


@rule(level=Level.WARN)
def check_longest_option_is_right(checked: Checked) -> Iterator[Finding]:
    """The right option is not much longer than the wrong ones.

    Much is more than one and a half times the middle one of the wrong options, and more than 15
    letters besides.
    Why: writers take more care with what is right, and the longest option is the first guess of
    everybody who does not know.
    Bad: `right: Stop, close the valve, wait until the gauge shows nought` and `wrong: Open it`
    Good: the reason stands under `because`, and the options are about as long as each other.
    Source: Haladyna, Downing and Rodriguez, A review of multiple-choice item-writing guidelines,
    2002, guidelines 24 and 28d.
    """
    for read in checked.items:
        if len(read.right) != 1 or not read.wrong:
            continue
        key = len(read.right[0].text)
        lengths = [len(each.text) for each in read.wrong]
        if key <= min(lengths) + _LETTERS_MORE:
            continue
        usual = median(lengths)
        if key > _TIMES * usual and key > usual + _LETTERS_MORE:
            yield Finding(
                read.right[0].option.place,
                f"the right option of {read.name} has {key} letters, the wrong ones about"
                f" {usual:g}",
                "Shorten it, or put part of it under “because”.",
                (read.item.place,),
            )
