"""How likely a count is when only chance is at work: binomial tail and chi-square, without tables.

Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 1964, 26.5.24 (binomial tail),
6.5.29 and 6.5.31 (incomplete gamma function), 26.4.19 (chi-square tail).
"""

from __future__ import annotations

import math
from collections.abc import Sequence

_CLOSE = 1e-15
_MOST_TERMS = 10_000


def at_least(hits: int, tries: int, chance: float) -> float:
    """Return the probability of so many hits or more.

    Args:
        hits: how many were counted, 0 to ``tries``.
        tries: how many there could have been.
        chance: of each, above 0 and below 1.

    >>> round(at_least(8, 10, 0.7), 6)
    0.382783
    """
    if hits <= 0:
        return 1.0
    log_chance, log_rest = math.log(chance), math.log1p(-chance)
    return math.fsum(
        math.exp(
            math.lgamma(tries + 1)
            - math.lgamma(k + 1)
            - math.lgamma(tries - k + 1)
            + k * log_chance
            + (tries - k) * log_rest
        )
        for k in range(hits, tries + 1)
    )


def chi_square(counts: Sequence[int]) -> float:
    """Return how far counts are from being all alike: the sum of (counted - expected)²/expected.

    >>> round(chi_square([12, 3, 3, 2]), 6)
    13.2
    """
    expected = sum(counts) / len(counts)
    return math.fsum((each - expected) ** 2 for each in counts) / expected


def chi_square_at_least(value: float, degrees: int) -> float:
    """Return the probability of a chi-square of so much or more by chance.

    Args:
        value: the chi-square, 0 or more.
        degrees: of freedom, 1 or more; for counts, one less than there are.

    >>> round(chi_square_at_least(13.2, 3), 6)
    0.004223
    """
    half, x = degrees / 2, value / 2
    if x <= 0:
        return 1.0
    scale = math.exp(half * math.log(x) - x - math.lgamma(half))
    if x < half + 1:
        return 1.0 - scale * _series(half, x)
    return scale * _fraction(half, x)


def _series(a: float, x: float) -> float:
    term = total = 1 / a
    for n in range(1, _MOST_TERMS):
        term *= x / (a + n)
        total += term
        if term < total * _CLOSE:
            break
    return total


def _fraction(a: float, x: float) -> float:
    """Return the continued fraction of the upper incomplete gamma function, by Lentz."""
    tiny = 1e-300
    b = x + 1 - a
    c, d = 1 / tiny, 1 / b
    h = d
    for n in range(1, _MOST_TERMS):
        step = -n * (n - a)
        b += 2
        d = 1 / (step * d + b or tiny)
        c = b + step / c or tiny
        factor = d * c
        h *= factor
        if abs(factor - 1) < _CLOSE * 10:
            break
    return h
