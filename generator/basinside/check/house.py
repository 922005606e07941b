"""What the clinic's own jugs, syringes and spoons can measure."""

from __future__ import annotations

from fractions import Fraction

from basinside.check.checked import Checked
from basinside.science.house_measures import Measure, in_house_measures
from basinside.units import Kind


def own_measures(checked: Checked, kind: Kind) -> list[Measure]:
    """Return the clinic's measures of a volume, or of a mass."""
    return [
        Measure(
            name=each.name,
            holds=Fraction(each.holds),
            marks=Fraction(each.marks) if each.marks else None,
        )
        for each in checked.derived.measures
        if each.by_weight is (kind is Kind.MASS)
    ]


def next_measurable(checked: Checked, kind: Kind, needed: Fraction) -> Fraction | None:
    """Return the least amount that can be measured and is no less than what is needed.

    Args:
        checked: the handbook.
        kind: volume (in mL) or mass (in g).
        needed: more than nothing.

    Returns:
        None when no measure of that kind is written down.
    """
    own = own_measures(checked, kind)
    return Fraction(str(in_house_measures(needed, own).true_amount)) if own else None


def written(true: Fraction, kind: Kind) -> str:
    """Return an amount as an author writes it."""
    return f"{float(true):g} {'g' if kind is Kind.MASS else 'mL'}"
