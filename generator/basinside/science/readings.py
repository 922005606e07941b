"""A recorded run of a vessel: minutes and temperatures, read and checked.

Source: none; what counts as a record here is our own. Between two readings nobody knows the
temperature; the functions that use a record take it as a straight line.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise

from basinside.science.bounds import Number, within

# Our own bounds: what a probe in a vessel, an oven or a pot can have read. A reading above them
# was most likely written in °F.
LOWEST_READING_CELSIUS = -40
HIGHEST_READING_CELSIUS = 200
LARGEST_MINUTE = 1_000_000_000

LEAST_READINGS = 2


def read_run(
    minutes: Sequence[Number], celsius: Sequence[Number]
) -> tuple[tuple[Fraction, Fraction], ...]:
    """Read a record of temperatures.

    Parameters
    ----------
    minutes:
        When each reading was taken, in minutes from any beginning, each later than the one
        before.
    celsius:
        What was read, in °C, -40 to 200, one for each minute.

    Returns
    -------
    tuple[tuple[Fraction, Fraction], ...]
        The readings as (minute, °C), without rounding.

    Raises
    ------
    ValueError
        When there are fewer than two readings or not as many of each, when a number is none or
        outside its range, or when a minute is not later than the one before.

    Examples
    --------
    >>> len(read_run([0, 30], [121, 121]))
    2
    """
    if len(minutes) != len(celsius):
        raise ValueError(
            f"minutes and celsius must be as many, not {len(minutes)} and {len(celsius)}"
        )
    if len(minutes) < LEAST_READINGS:
        raise ValueError(f"minutes must have at least {LEAST_READINGS}, not {len(minutes)}")
    times = [within("minutes", each, -LARGEST_MINUTE, LARGEST_MINUTE) for each in minutes]
    warmth = [
        within("celsius", each, LOWEST_READING_CELSIUS, HIGHEST_READING_CELSIUS) for each in celsius
    ]
    for before, after in pairwise(times):
        if after <= before:
            raise ValueError(
                f"minutes must ascend: {float(after):g} is not later than {float(before):g}"
            )
    return tuple(zip(times, warmth, strict=True))
