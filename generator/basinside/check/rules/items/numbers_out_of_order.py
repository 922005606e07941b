"""The rule numbers-out-of-order."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.option_numbers import numbers_in
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.WARN)
def check_numbers_out_of_order(checked: Checked) -> Iterator[Finding]:
    """Options that are numbers are written in their order, rising or falling.

    Why: without a script they stand as they were written, and a reader looks for the number that he
    worked out. Searching among mixed ones measures patience.
    Bad: 20 min, 5 min, 10 min
    Good: 5 min, 10 min, 20 min
    Source: Haladyna, Downing and Rodriguez, A review of multiple-choice item-writing guidelines,
    2002, guideline 21.
    """
    words = checked.item_words
    for read in checked.items:
        if len(read.options) < 3 or read.in_figures < len(read.options):
            continue
        if not all(each.text[:1].isdigit() for each in read.options):
            continue
        found = [numbers_in(each.text, words) for each in read.options]
        numbers = [each.low for each in found if each and each.single and each.low is not None]
        if len(numbers) < len(read.options):
            continue
        if len({each.kind for each in found if each}) > 1:
            continue
        if numbers not in (sorted(numbers), sorted(numbers, reverse=True)):
            yield Finding(
                read.item.place.at("options"),
                f"the numbers of {read.name} stand as"
                f" {', '.join(each.text for each in read.options)}",
                "Write them in their order.",
                (read.item.place,),
            )
