"""A share of the whole, read as it was written: 0.7 is seven tenths, not the nearest binary."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

Written = Fraction | Decimal | float | str
"""A number as somebody writes it: 0.7, "0.7", Decimal("0.7") or Fraction(7, 10)."""


def as_written(value: Written) -> Fraction:
    """Return the number that was written.

    A float stands for the shortest decimal that reads back as it, which is what was typed.

    >>> as_written(0.7)
    Fraction(7, 10)
    """
    return Fraction(repr(value)) if isinstance(value, float) else Fraction(value)


def share(value: Written) -> Fraction:
    """Return a share of the whole, 0 to 1.

    Raises:
        ValueError: when it is less than nothing or more than all.
    """
    exact = as_written(value)
    if not 0 <= exact <= 1:
        raise ValueError(f"a share lies between 0 and 1; this is {value}")
    return exact
