"""The rule numeric-tolerance-on-unsafe-side."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.saying import amount
from basinside.model.item_kinds import amount_of
from basinside.problem import Level


@rule(level=Level.STOP)
def check_numeric_tolerance_on_unsafe_side(checked: Checked) -> Iterator[Finding]:
    """A number that is asked for accepts nothing on the side on which somebody is hurt.

    Why: a tolerance of 1 min around a boil of 20 min teaches that 19 min will do.
    Bad: `right: {figure: boil.hold}`, `unsafe: below`, `accept: {from: 19 min, to: 25 min}`
    Good: `accept: {to: 25 min}`; the end that is left out is the right number itself.
    Source: common practice.
    """
    for read in checked.items:
        if read.options_only:
            continue
        number = read.item.number
        if number is None or number.accept is None:
            continue
        right = amount_of(number.right, checked.content.figures)
        for key, end, side in (
            ("from", number.accept.from_, "below"),
            ("to", number.accept.to, "above"),
        ):
            if right is None or end is None or end.kind is not right.kind:
                continue
            if (end < right if side == "below" else end > right) and number.unsafe in {
                side,
                "both",
            }:
                yield Finding(
                    number.accept.place.at(key),
                    f"in {read.name} “{key}: {amount(end)}” accepts what is {side}"
                    f" {amount(right)}, the unsafe side",
                    f"Delete “{key}”: the right number is the end.",
                    (read.item.place,),
                )
