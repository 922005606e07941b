"""How this room reads a number: as it is written, finite, inside its range, or an error.

0.1 means one tenth here and not the binary number nearest to it, so that nothing that is counted
or compared (tablets, full spoons, the minutes of a hold) turns on the last figure of a float.

Source: none; these are the room's own manners.
"""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from math import isfinite, nextafter
from typing import TypeAlias

Number: TypeAlias = int | float | Decimal | Fraction


def exact(name: str, value: Number) -> Fraction:
    """Read a number as it is written.

    Parameters
    ----------
    name:
        What the number is, for the error.
    value:
        The number. True and False are no numbers here.

    Returns
    -------
    Fraction
        The number, without rounding.

    Raises
    ------
    ValueError
        When it is no number or not finite.

    Examples
    --------
    >>> exact("wanted_percent", 0.1)
    Fraction(1, 10)
    """
    if not _is_finite(value):
        raise ValueError(f"{name} must be a finite number, not {value}")
    return _written(value)


def within(name: str, value: Number, low: float, high: float) -> Fraction:
    """Read a number that lies in a range, both ends included.

    Raises
    ------
    ValueError
        When it is no number or lies outside.
    """
    if not _is_finite(value) or not _written(low) <= _written(value) <= _written(high):
        raise ValueError(f"{name} must be {low:g} to {high:g}, not {value}")
    return _written(value)


def above_nought(name: str, value: Number) -> Fraction:
    """Read a number of which there is some.

    Raises
    ------
    ValueError
        When it is no finite number, nought or below.
    """
    if not _is_finite(value) or value <= 0:
        raise ValueError(f"{name} must be above 0 and finite, not {value}")
    return _written(value)


def whole(name: str, value: int, low: int) -> int:
    """Read a whole number that is not below `low`.

    Raises
    ------
    ValueError
        When it is no whole number or too low.
    """
    if type(value) is not int or value < low:
        raise ValueError(f"{name} must be a whole number and not below {low}, not {value}")
    return value


def not_above(value: Fraction) -> float:
    """Return the float nearest to a number from below, so that a figure never claims more."""
    near = float(value)
    return near if Fraction(near) <= value else nextafter(near, float("-inf"))


def _is_finite(value: object) -> bool:
    if isinstance(value, bool) or not isinstance(value, int | float | Decimal | Fraction):
        return False
    if isinstance(value, Decimal) and value.is_nan():
        return False
    try:
        return isfinite(value)
    except OverflowError:  # a whole number or a fraction that no float can hold
        return False


def _written(value: Number) -> Fraction:
    return Fraction(float.__repr__(value)) if isinstance(value, float) else Fraction(value)
