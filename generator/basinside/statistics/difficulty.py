"""How many have an item right: the share of those who were shown it.

Source: Crocker and Algina, Introduction to Classical and Modern Test Theory, 1986 (from memory).
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction


def difficulty(marks: Sequence[int | None]) -> Fraction | None:
    """Return the share of people who had one item right; None when nobody was shown it.

    Args:
        marks: of each person 1 or 0; None who was not shown the item, who does not count.

    Raises:
        ValueError: when a mark is something else.

    >>> difficulty([1, 1, 0, None])
    Fraction(2, 3)
    """
    shown = [each for each in marks if each is not None]
    if any(each not in (0, 1) for each in shown):
        raise ValueError("a mark is 1 for right or 0 for wrong")
    return Fraction(sum(shown), len(shown)) if shown else None
