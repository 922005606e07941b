"""Boiling and steam by altitude as a table, each entry rounded to the safe side.

An altitude is rounded up to the next step: the air is thinner there, so water boils cooler and a
gauge has to show more. The page has the very same table.
"""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache
from math import ceil, floor
from typing import Final

from basinside.model.amounts import Heights
from basinside.science.atmosphere import HIGHEST_METRES, pressure_kpa
from basinside.science.boiling import boiling_point_celsius
from basinside.science.steam import saturation_pressure_kpa

STEP_METRES: Final = 50
LOWEST_CELSIUS, HIGHEST_CELSIUS = 100, 138  # of steam vessels (our own bounds)
TENTHS: Final = 10
TENS_OF_PA: Final = 100  # in a kPa


@lru_cache(maxsize=1)
def heights() -> Heights:
    """Return the table from sea level to the highest altitude that science has."""
    steps = range(0, int(HIGHEST_METRES) + 1, STEP_METRES)
    celsius = range(LOWEST_CELSIUS, HIGHEST_CELSIUS + 1)
    return Heights(
        step=STEP_METRES,
        highest=int(HIGHEST_METRES),
        boils=tuple(floor(boiling_point_celsius(each) * TENTHS) for each in steps),
        air=tuple(floor(pressure_kpa(each) * TENS_OF_PA) for each in steps),
        lowest_celsius=LOWEST_CELSIUS,
        steam=tuple(ceil(saturation_pressure_kpa(each) * TENS_OF_PA) for each in celsius),
    )


def step_at(table: Heights, metres: Fraction) -> int:
    """Return the place in the table of an altitude, rounded up."""
    return ceil(metres / table.step)


def gauge_kpa(table: Heights, celsius: int, at: int) -> int:
    """Return the whole kPa that a gauge must show for a temperature, rounded up."""
    return ceil(Fraction(table.steam[celsius - table.lowest_celsius] - table.air[at], TENS_OF_PA))


def reached_celsius(table: Heights, limit_kpa: Fraction, at: int) -> int | None:
    """Return the whole °C that steam reaches when a gauge shows so many kPa; None below 100 °C."""
    top = table.lowest_celsius + len(table.steam)
    within = (
        each
        for each in range(top - 1, table.lowest_celsius - 1, -1)
        if gauge_kpa(table, each, at) <= limit_kpa
    )
    return next(within, None)
