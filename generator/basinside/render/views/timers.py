"""What the times at the steps are about, for the script that runs them."""

from __future__ import annotations

from typing import Any, Final

from basinside.model.derived import PlacedStep, WholeProcedure
from basinside.model.entry import FigureRef
from basinside.render.views.spot import Spot, state
from basinside.render.views.titles import procedure_title
from basinside.render.wording import _
from basinside.units import Kind

SHORTEST_SECONDS: Final = 60
"""A shorter time is counted, not timed: wet hands do not press a button for it."""


def timed(spot: Spot, placed: PlacedStep) -> FigureRef | None:
    """Return the time that is run at a step, or None when there is none to run."""
    reference = placed.step.hold or placed.step.wait
    seconds = _seconds(spot, reference)
    return reference if seconds is not None and seconds >= SHORTEST_SECONDS else None


def timers_data(spot: Spot, whole: WholeProcedure) -> dict[str, Any]:
    """Return, for each step that is timed, its seconds, its name and what an interruption means."""
    return {
        "procedure": whole.procedure.procedure,
        "steps": {
            placed.step.step: _about(spot, whole, placed, reference)
            for placed in whole.steps
            if (reference := timed(spot, placed)) is not None
        },
    }


def _about(
    spot: Spot, whole: WholeProcedure, placed: PlacedStep, reference: FigureRef
) -> dict[str, Any]:
    hold = placed.step.hold
    again = hold.if_interrupted if hold else None
    return {
        "seconds": _seconds(spot, reference),
        "longest": _seconds(spot, hold.no_longer_than) if hold else None,
        "time": spot.desk.content.figures[reference.figure].value.text(),
        "name": _("{title}, step {n}").format(title=procedure_title(whole), n=placed.number),
        "interrupted": "".join(span.text for span in spot.prose(again and state(again))),
    }


def _seconds(spot: Spot, reference: FigureRef | None) -> int | None:
    figure = spot.desk.content.figures.get(reference.figure) if reference else None
    if figure is None or figure.value.kind is not Kind.TIME:
        return None
    return int(figure.value.base)
