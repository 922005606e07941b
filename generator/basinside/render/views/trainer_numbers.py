"""What the trainer's page reckons with: the reference, our steam, our altitude, and rounding."""

from __future__ import annotations

from math import floor
from typing import Final

from basinside.model.equipment import Route
from basinside.model.figure import Figure
from basinside.render.views.spot import Spot
from basinside.science.lethality import REFERENCE_CELSIUS
from basinside.science.steam import f0_minutes

REFERENCE_FIGURE: Final = "f0.reference-heat"
"""The id under which a handbook keeps its reference temperature, if it does."""


def reference_celsius(spot: Spot) -> float:
    """Return the temperature in °C to which F0 refers in this handbook."""
    figure = spot.desk.content.figures.get(REFERENCE_FIGURE)
    return float(figure.value.base) if figure else REFERENCE_CELSIUS


def worth_minutes(spot: Spot, minutes: float, celsius: float) -> float:
    """Return F0 of a time held at one temperature."""
    return f0_minutes((0, minutes), (celsius, celsius), reference_celsius(spot))


def amount(value: float) -> str:
    """Return a number with three figures, rounded down: nothing is said to kill more than it does.

    Examples
    --------
    >>> amount(29.319), amount(0.02566), amount(12345.6)
    ('29.3', '0.0256', '12,300')
    """
    if value <= 0:
        return "0"
    places = 2 - floor(_log10(value))
    step = 10.0**-places
    down = floor(value / step + 1e-9) * step
    return f"{down:,.{max(places, 0)}f}"


def _log10(value: float) -> float:
    return float(f"{value:e}".partition("e")[2])


def steam_route(spot: Spot) -> tuple[Route, Figure, Figure] | None:
    """Return a steam route of this clinic with its temperature and its time, or None."""
    content = spot.desk.content
    handbook = content.handbook
    for route in content.routes.values():
        if route.kind != "steam" or (handbook and route.route not in handbook.clinic.has):
            continue
        heat = content.figures.get(route.temperature.figure) if route.temperature else None
        hold = content.figures.get(route.hold.figure) if route.hold else None
        if heat and hold:
            return route, heat, hold
    return None


def altitude_metres(spot: Spot) -> float:
    """Return the clinic's height above the sea in metres; 0 where nobody says it."""
    handbook = spot.desk.content.handbook
    return float(handbook.clinic.altitude.base) if handbook else 0.0
