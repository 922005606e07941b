"""Between which bounds a reliability lies, given how few people it was found with.

Source: Feldt, Woodruff and Salih, Statistical inference for coefficient alpha, Applied
Psychological Measurement 11 (1987) 93, equations 6 and 7.
"""

from __future__ import annotations

from typing import NamedTuple

from basinside.science.variance_ratio import value_below


class Interval(NamedTuple):
    """Two bounds."""

    low: float
    high: float


def feldt_interval(
    reliability: float, items: int, people: int, confidence: float = 0.95
) -> Interval:
    """Return the bounds of a KR-20 or an alpha.

    Args:
        reliability: as found.
        items: 2 or more.
        people: 2 or more.
        confidence: above 0 and below 1.

    Raises:
        ValueError: when there are fewer, or the confidence is none.

    >>> [round(each, 4) for each in feldt_interval(0.79, 26, 41, 0.90)]
    [0.7047, 0.8616]
    """
    if items < 2 or people < 2 or not 0 < confidence < 1:
        raise ValueError("bounds need two items, two people and a confidence between 0 and 1")
    tail = (1 - confidence) / 2
    over, under = people - 1, (people - 1) * (items - 1)
    return Interval(
        1 - (1 - reliability) * value_below(1 - tail, over, under),
        1 - (1 - reliability) * value_below(tail, over, under),
    )
