"""How the parts of an instrument go under, in water or in a bath."""

from __future__ import annotations

from typing import Literal

from basinside.model.equipment import Route
from basinside.model.instrument import Instrument, Part
from basinside.model.words import Immersion

Under = Literal["boiling", "chemical"]


def goes_into(route: Route) -> Under | None:
    """Return in what a route puts the parts under, or None when it puts them under nothing."""
    if route.kind == "boiling":
        return "boiling"
    return "chemical" if route.kind == "chemical" else None


def goes_under(instrument: Instrument, part: Part, kind: Under) -> Immersion | None:
    """Return how a part goes under: as it says itself, or its instrument for it; None unstated."""
    for stated in (part.immersion, instrument.immersion):
        if stated is not None:
            found = stated.boiling if kind == "boiling" else stated.chemical
            if found is not None:
                return found
    return None
