"""An amount of product in the house's own measures, line by line."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from basinside.derive.amounts.numbers import plain
from basinside.model.amounts import Ground, Said, said
from basinside.science.bounds import exact
from basinside.science.house_measures import Measure, in_house_measures

MANY_MOVES: Final = 8
"""Pours from which on somebody loses count (common practice)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasuredOut:
    """How an amount is measured out; no lines when no measure of the house fits."""

    lines: tuple[Said, ...] = ()
    working: tuple[Said, ...] = ()
    total: Fraction = Fraction(0)
    moves: int = 0


def measured_out(
    amount: Fraction, ground: Ground, *, by_weight: bool, most: Fraction | None = None
) -> MeasuredOut:
    """Return an amount in mL (or in g) in the measures of the house, never too little.

    Nothing when the house has no such measure, or when even its finest makes more than ``most``.
    """
    own = [each for each in ground.measures if each.by_weight is by_weight]
    if not own:
        return MeasuredOut()
    found = in_house_measures(
        amount,
        [
            Measure(
                name=str(at),
                holds=Fraction(each.holds),
                marks=Fraction(each.marks) if each.marks else None,
            )
            for at, each in enumerate(own)
        ],
    )
    total = exact("total", found.true_amount)
    if most is not None and total > most:
        return MeasuredOut()
    unit = "g" if by_weight else "mL"
    lines = []
    for pour in found.amounts:
        measure = own[int(pour.measure)]
        filled = exact("filled", pour.amount)
        full = filled == Fraction(measure.holds)
        lines.append(
            said(
                "pour-full" if full else "pour-to-mark",
                times=str(pour.times),
                measure=measure.name,
                amount=plain(filled),
                unit=unit,
            )
        )
    return MeasuredOut(
        lines=tuple(lines),
        working=(said("work-measured", total=plain(total), unit=unit),),
        total=total,
        moves=found.moves,
    )
