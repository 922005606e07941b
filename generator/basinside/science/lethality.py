"""How much a heat kills: lethal rate, F0, and the arithmetic of D and SAL.

For a trainer's page and for scenarios. No load is released on these numbers: it is released on
the time held at temperature, on its indicator and dry.

Source: C. R. Stumbo, Thermobacteriology in Food Processing, 2nd edition, 1973, for D, z and F (from
memory). Published tables take 121, 121.1 or 121.11 °C (250 °F) as the reference and z = 10 °C; both
are parameters here.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise
from math import expm1, fsum, log

from basinside.science.bounds import Number, above_nought, within
from basinside.science.readings import (
    HIGHEST_READING_CELSIUS,
    LARGEST_MINUTE,
    LOWEST_READING_CELSIUS,
    read_run,
)

REFERENCE_CELSIUS = 121.1
Z_CELSIUS = 10.0
LOWEST_Z_CELSIUS = 1  # our own bounds; test spores have about 10 °C
HIGHEST_Z_CELSIUS = 100

# Our own bounds; the usual test spore has a D of 1.5 to 3 min at 121.1 °C.
SHORTEST_D_MINUTES = 0.001
LONGEST_D_MINUTES = 1_000
LARGEST_POWER = 30
MOST_SURVIVORS = 1e30


def lethal_rate(
    celsius: Number, reference_celsius: Number = REFERENCE_CELSIUS, z: Number = Z_CELSIUS
) -> float:
    """How much one minute at a temperature kills, in minutes at the reference temperature.

    Parameters
    ----------
    celsius, reference_celsius:
        Temperatures in °C, -40 to 200.
    z:
        Rise in °C that kills ten times as fast, 1 to 100.

    Returns
    -------
    float
        Minutes at the reference for each minute, 10^((T - reference) / z).

    Raises
    ------
    ValueError
        When a parameter is outside its range.

    Examples
    --------
    >>> round(lethal_rate(120), 4)
    0.7762
    """
    warm = within("celsius", celsius, LOWEST_READING_CELSIUS, HIGHEST_READING_CELSIUS)
    reference, steps = _reference(reference_celsius, z)
    return float(10.0 ** float((warm - reference) / steps))


def f0_minutes(
    minutes: Sequence[Number],
    celsius: Sequence[Number],
    reference_celsius: Number = REFERENCE_CELSIUS,
    z: Number = Z_CELSIUS,
) -> float:
    """F0 of a recorded run: the minutes at the reference temperature that kill as much.

    Between two readings the temperature is taken as a straight line, and the lethal rate along it
    is integrated exactly: with k = ln 10 x (T2 - T1) / z it is dt x L1 x (e^k - 1) / k.

    Parameters
    ----------
    minutes:
        When each reading was taken, in minutes, each later than the one before.
    celsius:
        What was read, in °C, -40 to 200, one for each minute.
    reference_celsius:
        Reference temperature in °C, -40 to 200.
    z:
        Rise in °C that kills ten times as fast, 1 to 100.

    Returns
    -------
    float
        F0 in minutes.

    Raises
    ------
    ValueError
        When there are fewer than two readings or not as many of each, when minutes do not
        ascend, or when a number is none or outside its range.

    Examples
    --------
    >>> round(f0_minutes([0, 15], [121, 121]), 2)
    14.66
    """
    run = read_run(minutes, celsius)
    reference, steps = _reference(reference_celsius, z)
    return fsum(
        float(later - earlier) * _mean_rate((first - reference) / steps, (last - reference) / steps)
        for (earlier, first), (later, last) in pairwise(run)
    )


def minutes_for_sal(d_minutes: Number, log10_start: Number, log10_sal: Number) -> float:
    """Minutes at D's temperature until so few are left: D x (log10 N0 - log10 SAL).

    Parameters
    ----------
    d_minutes:
        Minutes that leave a tenth alive, 0.001 to 1000.
    log10_start:
        Power of ten of the living at the start, -30 to 30: 6 for a million.
    log10_sal:
        Power of ten that is wanted, not above the start's: -6 for one in a million.

    Returns
    -------
    float
        Minutes.

    Raises
    ------
    ValueError
        When a parameter is outside its range.

    Examples
    --------
    >>> minutes_for_sal(1.5, 6, -6)
    18.0
    """
    one_tenth = within("d_minutes", d_minutes, SHORTEST_D_MINUTES, LONGEST_D_MINUTES)
    start = within("log10_start", log10_start, -LARGEST_POWER, LARGEST_POWER)
    wanted = within("log10_sal", log10_sal, -LARGEST_POWER, LARGEST_POWER)
    if wanted > start:
        raise ValueError(f"log10_sal must not be above log10_start, {log10_start}: {log10_sal}")
    return float(one_tenth * (start - wanted))


def survivors(start: Number, d_minutes: Number, f_minutes: Number) -> float:
    """How many are left alive on average: N0 x 10^(-F / D).

    Parameters
    ----------
    start:
        Living at the start, above 0 and at most 10^30.
    d_minutes:
        Minutes that leave a tenth alive, 0.001 to 1000.
    f_minutes:
        Minutes at D's temperature, or F0 when D is for its reference, 0 to 1,000,000,000.

    Returns
    -------
    float
        Survivors; below 1 it is the chance that one item still has a living one. Nought only
        where the number is too small for a float.

    Raises
    ------
    ValueError
        When a parameter is outside its range.

    Examples
    --------
    >>> round(survivors(1e6, 1.5, 8), 2)
    4.64
    """
    within("start", above_nought("start", start), 0, MOST_SURVIVORS)
    one_tenth = within("d_minutes", d_minutes, SHORTEST_D_MINUTES, LONGEST_D_MINUTES)
    killed = within("f_minutes", f_minutes, 0, LARGEST_MINUTE) / one_tenth
    return float(float(start) * 10.0 ** -float(killed))


def _reference(reference_celsius: Number, z: Number) -> tuple[Fraction, Fraction]:
    return (
        within(
            "reference_celsius", reference_celsius, LOWEST_READING_CELSIUS, HIGHEST_READING_CELSIUS
        ),
        within("z", z, LOWEST_Z_CELSIUS, HIGHEST_Z_CELSIUS),
    )


def _mean_rate(first: Fraction, last: Fraction) -> float:
    """Mean of 10^x while x goes evenly from `first` to `last`.

    `expm1` keeps the difference that two nearly equal powers would lose.
    """
    growth = log(10) * float(last - first)
    mean = expm1(growth) / growth if growth else 1.0
    return float(10.0 ** float(first) * mean)
