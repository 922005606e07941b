"""By how much a score may be off.

Sources: Lord, Do tests of the same length have the same standard error of measurement?, Educational
and Psychological Measurement 17 (1957) 510; Lord and Novick, Statistical Theories of Mental Test
Scores, 1968 (both from memory).
"""

from __future__ import annotations

from fractions import Fraction
from math import sqrt


def standard_error(spread: float, reliability: float) -> float:
    """Return the standard error of measurement of a whole test, in the unit of the scores.

    Args:
        spread: standard deviation of the scores, 0 or more.
        reliability: at most 1.

    Raises:
        ValueError: when either is outside.

    >>> round(standard_error(10, 0.84), 6)
    4.0
    """
    if spread < 0 or reliability > 1:
        raise ValueError("a spread is 0 or more, a reliability 1 at most")
    return spread * sqrt(1 - reliability)


def error_at(right: int, items: int) -> float:
    """Return the standard error at one score, in items: Lord's binomial error.

    Better than that of the whole test near a cut; smallest at the ends.

    Args:
        right: how many were right, 0 to ``items``.
        items: 2 or more.

    Raises:
        ValueError: when either is outside.

    >>> round(error_at(16, 20), 6)
    1.835326
    """
    if items < 2 or not 0 <= right <= items:
        raise ValueError(f"nobody has {right} right of {items}")
    return sqrt(Fraction(right * (items - right), items - 1))
