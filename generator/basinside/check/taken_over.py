"""What a variant takes over from its sibling: it is told once, where it is written."""

from __future__ import annotations

from basinside.model.instrument import Instrument
from basinside.problem import Place


def taken_over(instrument: Instrument, place: Place) -> bool:
    """Whether what stands at a place was written at a sibling and not at this instrument."""
    return place.file != instrument.place.file
