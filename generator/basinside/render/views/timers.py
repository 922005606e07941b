"""What the times at the steps are about, for the script that runs them."""

from __future__ import annotations

from typing import Any, Final

from basinside.model.derived import PlacedStep, WholeProcedure
from basinside.model.entry import FigureRef
from basinside.render.views.spot import Spot, state
from basinside.render.views.titles import procedure_title
from basinside.render.wording import _, sentence
from basinside.units import Kind

SHORTEST_SECONDS: Final = 60
"""A shorter time is counted, not timed: wet hands do not press a button for it."""


def timed(spot: Spot, whole: WholeProcedure, placed: PlacedStep) -> FigureRef | None:
    """Return the time that is run at a step, or None when there is none to run.

    A test has the longest wait of its instrument's lines.
    """
    waits = [placed.step.hold or placed.step.wait]
    if waits == [None] and placed.step.action == "test" and whole.instrument:
        waits = [line.wait for line in whole.instrument.function_test]
    known = [(seconds, each) for each in waits if (seconds := _seconds(spot, each)) is not None]
    longest = max(known, key=lambda each: each[0], default=(0, None))
    return longest[1] if longest[0] >= SHORTEST_SECONDS else None


def timers_data(spot: Spot, whole: WholeProcedure) -> dict[str, Any]:
    """Return, for each step that is timed, its seconds, its name and what an interruption means."""
    return {
        "procedure": whole.procedure.procedure,
        "steps": {
            placed.step.step: _about(spot, whole, placed, reference)
            for placed in whole.steps
            if (reference := timed(spot, whole, placed)) is not None
        },
    }


def _about(
    spot: Spot, whole: WholeProcedure, placed: PlacedStep, reference: FigureRef
) -> dict[str, Any]:
    hold = placed.step.hold
    again = hold.if_interrupted if hold else None
    short = _("{what}, step {n}").format(what=_what(whole, placed), n=placed.number)
    return {
        "seconds": _seconds(spot, reference),
        "longest": _seconds(spot, hold.no_longer_than) if hold else None,
        "time": spot.desk.content.figures[reference.figure].value.text(),
        "short": short,
        "name": _("{short}: {title}").format(short=short, title=_of_what(whole)),
        "interrupted": "".join(span.text for span in spot.prose(again and state(again))),
        "goesOn": bool(hold and hold.goes_on),
    }


def _what(whole: WholeProcedure, placed: PlacedStep) -> str:
    """Return what runs: the way itself at the step that gives the level, else the stage."""
    if placed.is_level_step and whole.route:
        return whole.route.name
    return sentence(placed.stage.stage)


def _of_what(whole: WholeProcedure) -> str:
    """Return the instrument with what tells it from its like, without the rest of its name."""
    if whole.instrument is None:
        return procedure_title(whole)
    name = ",".join(whole.instrument.name.split(",")[:2])
    return name[:1].lower() + name[1:]


def _seconds(spot: Spot, reference: FigureRef | None) -> int | None:
    figure = spot.desk.content.figures.get(reference.figure) if reference else None
    if figure is None or figure.value.kind is not Kind.TIME:
        return None
    return int(figure.value.base)
