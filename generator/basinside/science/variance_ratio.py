"""How likely a ratio of two variances is when only chance is at work: Fisher's F, without tables.

Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 1964, 26.6.2 (F by the incomplete
beta function), 26.5.8 (its continued fraction), 6.6.3 (its symmetry).
"""

from __future__ import annotations

import math

_CLOSE = 1e-15
_MOST_TERMS = 10_000
_HALVINGS = 200


def at_most(ratio: float, over: int, under: int) -> float:
    """Return the probability of a ratio of so much or less by chance.

    Args:
        ratio: of the variances, 0 or more.
        over: degrees of freedom of the variance above the line, 1 or more.
        under: of the variance below it, 1 or more.

    >>> round(at_most(4.0, 1, 1), 6)
    0.704833
    """
    if ratio <= 0:
        return 0.0
    return _beta(over * ratio / (under + over * ratio), over / 2, under / 2)


def value_below(probability: float, over: int, under: int) -> float:
    """Return the ratio that is not exceeded with a probability, by halving.

    Args:
        probability: above 0 and below 1.
        over: degrees of freedom of the variance above the line, 1 or more.
        under: of the variance below it, 1 or more.

    Raises:
        ValueError: when the probability is outside.

    >>> round(value_below(0.95, 2, 10), 4)
    4.1028
    """
    if not 0 < probability < 1:
        raise ValueError(f"a ratio is not exceeded with a probability of 0 to 1, not {probability}")
    low, high = 0.0, 1.0
    while at_most(high, over, under) < probability:
        low, high = high, 2 * high
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        if not low < middle < high:
            break
        if at_most(middle, over, under) < probability:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def _beta(x: float, a: float, b: float) -> float:
    """Return the regularised incomplete beta function."""
    if x >= 1:
        return 1.0
    if x > (a + 1) / (a + b + 2):
        return 1.0 - _beta(1 - x, b, a)
    scale = math.exp(
        math.lgamma(a + b) - math.lgamma(a) - math.lgamma(b) + a * math.log(x) + b * math.log1p(-x)
    )
    return scale * _fraction(x, a, b) / a


def _fraction(x: float, a: float, b: float) -> float:
    """Return the continued fraction of the incomplete beta function, by Lentz."""
    tiny = 1e-300
    c, d = 1.0, 1 / (1 - (a + b) * x / (a + 1) or tiny)
    h = d
    for m in range(1, _MOST_TERMS):
        even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m))
        odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1))
        for step in (even, odd):
            d = 1 / (1 + step * d or tiny)
            c = 1 + step / c or tiny
            h *= c * d
        if abs(c * d - 1) < _CLOSE * 10:
            break
    return h
