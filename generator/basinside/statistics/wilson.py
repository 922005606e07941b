"""Between which bounds a share lies, given how few people it was counted with.

Source: Wilson, Probable inference, the law of succession, and statistical inference, Journal of
the American Statistical Association 22 (1927) 209, as in Newcombe, Statistics in Medicine 17
(1998) 857, method 3. Unlike the textbook's bounds it never says "0 to 0" of nobody in twenty.
"""

from __future__ import annotations

from math import sqrt
from statistics import NormalDist

from basinside.statistics.feldt import Interval


def wilson_interval(hits: int, people: int, confidence: float = 0.95) -> Interval:
    """Return the bounds of a share.

    Args:
        hits: how many, 0 to ``people``.
        people: 1 or more.
        confidence: above 0 and below 1.

    Raises:
        ValueError: when one is outside.

    >>> [round(each, 4) for each in wilson_interval(81, 263)]
    [0.2553, 0.3662]
    """
    if people < 1 or not 0 <= hits <= people or not 0 < confidence < 1:
        raise ValueError(f"no share is {hits} of {people} with a confidence of {confidence}")
    z = NormalDist().inv_cdf((1 + confidence) / 2)
    middle = hits + z * z / 2
    half = z * sqrt(hits * (people - hits) / people + z * z / 4)
    whole = people + z * z
    low = (middle - half) / whole if hits else 0.0
    return Interval(low, (middle + half) / whole if hits < people else 1.0)
