"""Numbers as an answer shows them: plain decimals, rounded to the side that is asked for."""

from __future__ import annotations

from fractions import Fraction
from math import ceil, floor
from typing import Final

SHOWN_FIGURES: Final = 3
"""Figures of a rounded number: more than any jug, scale or dial can show (our own bound)."""


def plain(value: Fraction) -> str:
    """Return a number that has a finite decimal, with no trailing nought and no exponent.

    Examples
    --------
    >>> plain(Fraction(1, 8)), plain(Fraction(4900))
    ('0.125', '4900')
    """
    places, scaled = 0, value
    while scaled.denominator != 1:
        places, scaled = places + 1, scaled * 10
    figures = str(abs(scaled.numerator)).rjust(places + 1, "0")
    sign = "-" if scaled < 0 else ""
    whole, rest = figures[: len(figures) - places], figures[len(figures) - places :]
    return f"{sign}{whole}.{rest}" if rest else f"{sign}{whole}"


def up(value: Fraction) -> Fraction:
    """Return a number that is not negative with three figures, not below the number.

    Examples
    --------
    >>> plain(up(Fraction(1000, 7)))
    '143'
    """
    step = _step(value)
    return ceil(value / step) * step


def down(value: Fraction) -> Fraction:
    """Return a number that is not negative with three figures, not above the number.

    Examples
    --------
    >>> plain(down(Fraction(1000, 7)))
    '142'
    """
    step = _step(value)
    return floor(value / step) * step


def tenths_down(value: Fraction) -> Fraction:
    """Return a number cut to one decimal."""
    return Fraction(floor(value * 10), 10)


def _step(value: Fraction) -> Fraction:
    step = Fraction(1)
    if value <= 0:
        return step
    most = Fraction(10) ** SHOWN_FIGURES
    while value >= most * step:
        step *= 10
    while value * 10 < most * step:
        step /= 10
    return step
