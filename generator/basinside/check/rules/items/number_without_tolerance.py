"""The rule number-without-tolerance."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.STOP)
def check_number_without_tolerance(checked: Checked) -> Iterator[Finding]:
    """An item that asks for a number says what else counts as right, or that nothing does.

    Why: who measures 99 mL on a jug with marks of 50 mL has measured 100 mL. An author who thought
    of it writes `accept`, or `exact: yes` for what is counted or read off.
    Bad: `number: {right: 105 mL, unsafe: below}`
    Good: the same with `accept: {to: 150 mL}`, or with `exact: yes`.
    Source: common practice.
    """
    for read in checked.items:
        if read.options_only:
            continue
        number = read.item.number
        if number is None:
            continue
        if number.accept is None and not number.exact:
            said = f"{read.name} does not say which other numbers are accepted"
            mend = "Write “accept:”, or “exact: yes” when none is."
            yield Finding(number.place, said, mend, (read.item.place,))
        elif number.accept is not None and number.exact:
            said = f"{read.name} says “exact: yes” and accepts other numbers"
            yield Finding(number.place.at("exact"), said, "Delete one of them.", (read.item.place,))
