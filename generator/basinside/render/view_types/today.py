"""The page that says what can be used this shift."""

from __future__ import annotations

from dataclasses import dataclass

from basinside.render.view_types.instrument import MatrixView
from basinside.render.view_types.learning import PlaceView
from basinside.render.view_types.text import FactView, Prose


@dataclass(frozen=True, slots=True, kw_only=True)
class TodayView:
    """``today.html``: the place that the script fills, and what holds on every day.

    ``needs`` say for each way what it takes, ``emergency`` what is done when none is open.
    """

    title: str
    lead: Prose
    place: PlaceView
    matrix_heading: str
    matrix: MatrixView
    needs_heading: str
    needs: tuple[FactView, ...]
    emergency_heading: str
    emergency: tuple[FactView, ...]
    single_heading: str
    single: tuple[FactView, ...]
