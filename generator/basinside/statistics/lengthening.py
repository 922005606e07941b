"""How reliable a test becomes when it grows by items of the same kind.

Source: Spearman and Brown, each in the British Journal of Psychology 3 (1910), 271 and 296 (from
memory).
"""

from __future__ import annotations

from basinside.statistics.share import Written, as_written


def spearman_brown(reliability: Written, times: Written) -> float:
    """Return the reliability of a test of so many times the length.

    Args:
        reliability: of the test as it is, above -1.
        times: as long; more than 0.

    Raises:
        ValueError: when the length is none.

    >>> spearman_brown(0.60, 2)
    0.75
    """
    own, factor = as_written(reliability), as_written(times)
    if factor <= 0 or own <= -1:
        raise ValueError("a test is some times as long, and its reliability above -1")
    whole = 1 + (factor - 1) * own
    if whole <= 0:
        raise ValueError("no test of this length can be so unreliable")
    return float(factor * own / whole)


def times_as_long(reliability: Written, wanted: Written) -> float:
    """Return how many times as long a test must be to be as reliable as wanted.

    Args:
        reliability: of the test as it is, above 0 and below 1.
        wanted: above 0 and below 1.

    Raises:
        ValueError: when either is outside.

    >>> round(times_as_long(0.60, 0.80), 6)
    2.666667
    """
    own, aim = as_written(reliability), as_written(wanted)
    if not (0 < own < 1 and 0 < aim < 1):
        raise ValueError("a reliability that length can change lies between 0 and 1")
    return float(aim * (1 - own) / (own * (1 - aim)))
