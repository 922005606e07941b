"""What several rules hold about how strong a solution may be, and how strong one is."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from basinside.quantity import Quantity
from basinside.units import Kind

MUCH_TOO_STRONG: Final = 2
"""Times what is needed; a house's measures are rounded up, but never that far (our own bound)."""
NOTED_WHEN_STRONGER: Final = Fraction(11, 10)
"""Times what is needed from which whoever mixes it is shown the true strength (our own bound)."""
MILLILITRES_IN_LITRE: Final = 1000


def strength_made(held: Quantity, part: Quantity, whole: Quantity | None) -> Fraction | None:
    """Return how strong a solution is that an amount of product makes, in ppm available chlorine.

    Args:
        held: the strength of the product.
        part: how much of it, in mL of a liquid or g of a powder: 1 % is 1 g in 100 mL.
        whole: the volume that it is made up to; one litre without one.

    Returns None where the product is not one of chlorine or the volume is none.
    """
    if held.kind is not Kind.CHLORINE or (whole is not None and whole.kind is not Kind.VOLUME):
        return None
    millilitres = whole.base if whole else Fraction(MILLILITRES_IN_LITRE)
    return held.base * part.base / millilitres if millilitres > 0 else None
