"""The rule longest-too-often-right."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.item_texts import ReadItem
from basinside.check.rule import Finding, rule
from basinside.problem import Level
from basinside.science.chance import at_least

_BY_CHANCE: Final = 0.05
_FEWEST: Final = 10


@rule(level=Level.WARN)
def check_longest_too_often_right(checked: Checked) -> Iterator[Finding]:
    """Over all items the longest option is right no more often than chance would have it.

    Counted in each pool among choices with the same number of options, from ten on. With n options
    the longest is right once in n; it asks when so many or more would happen by chance in fewer
    than 5 of 100 handbooks.
    Why: who always takes the longest option would pass, and each item alone looks sound.
    Bad: of 20 items with four options the longest is right in 14.
    Good: in about 5 of them.
    Source: Haladyna, Downing and Rodriguez, A review of multiple-choice item-writing guidelines,
    2002, guideline 28d; the test is the binomial tail.
    """
    longest: dict[tuple[str, int], list[ReadItem]] = {}
    asked: dict[tuple[str, int], int] = {}
    for read in checked.items:
        if len(read.right) != 1 or not read.wrong:
            continue
        group = read.pool, len(read.options)
        asked[group] = asked.get(group, 0) + 1
        if len(read.right[0].text) > max([len(each.text) for each in read.wrong]):
            longest.setdefault(group, []).append(read)
    for (pool, options), found in longest.items():
        tries = asked[pool, options]
        if tries < _FEWEST:
            continue
        if at_least(len(found), tries, 1 / options) < _BY_CHANCE:
            yield Finding(
                found[0].right[0].option.place,
                f"in {len(found)} of the {tries} choices with {options} options of the {pool}"
                f" questions the longest option is right; about {round(tries / options)} would be"
                " chance",
                "Shorten right options or lengthen wrong ones, beginning here.",
                (found[0].item.place,),
            )
