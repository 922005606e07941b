"""Did the same people change? Exact, from those who changed alone.

Source: McNemar, Note on the sampling error of the difference between correlated proportions,
Psychometrika 12 (1947) 153 (from memory); exact by the binomial distribution.
"""

from __future__ import annotations

from math import comb


def mcnemar(one_way: int, other_way: int) -> float:
    """Return how likely changes are as lopsided as these, or more, by chance alone.

    Args:
        one_way: people who failed before and pass now.
        other_way: people who passed before and fail now.

    Raises:
        ValueError: when either is fewer than none.

    >>> round(mcnemar(2, 11), 7)
    0.0224609
    """
    if one_way < 0 or other_way < 0:
        raise ValueError("nobody is fewer than none")
    changed, fewer = one_way + other_way, min(one_way, other_way)
    ways = sum(comb(changed, k) for k in range(fewer + 1))
    return min(1.0, 2 * ways / (1 << changed))
