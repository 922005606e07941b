"""Findings about steps of any procedure, those of tasks too, and what rules ask of such steps."""

from __future__ import annotations

from collections.abc import Iterable

from basinside.check.checked import Checked
from basinside.check.rule import Finding
from basinside.model.derived import PlacedStep, WholeProcedure
from basinside.model.words import Action


def at_its_step(
    whole: WholeProcedure, placed: PlacedStep, message: str, hint: str = "", key: str = ""
) -> Finding:
    """Return a finding at a step or a field of it; a waiver at its procedure counts too."""
    place = placed.step.place
    return Finding(place.at(key) if key else place, message, hint, (whole.procedure.place, place))


def at_its_stages(whole: WholeProcedure, message: str, hint: str = "") -> Finding:
    """Return a finding about something that no step of a procedure does."""
    place = whole.procedure.place
    return Finding(place.at("stages"), message, hint, (place,))


def first_of(steps: Iterable[PlacedStep], *actions: Action) -> PlacedStep | None:
    """Return the first step with one of the actions."""
    return next((placed for placed in steps if placed.action in actions), None)


def tasks(checked: Checked) -> tuple[WholeProcedure, ...]:
    """Return the tasks: procedures without an instrument, which several others share."""
    return tuple(
        whole for whole in checked.derived.procedures.values() if whole.procedure.instrument is None
    )
