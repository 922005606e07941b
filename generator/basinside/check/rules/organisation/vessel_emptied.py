"""The rule vessel-emptied."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.model.derived import PlacedStep, WholeProcedure
from basinside.model.words import Action
from basinside.problem import Level

EMPTIES: Final[frozenset[Action]] = frozenset({"discard", "dry"})


@rule(level=Level.WARN)
def check_vessel_emptied(checked: Checked) -> Iterator[Finding]:
    """Pot and steam vessel are emptied, and stand dry until they are used again.

    Why: water that stands over night grows slime, eats metal and leaves scale, and the next load
    boils in it.
    For each container in which a procedure with `kind: boiling`, or a run of a steam vessel,
    exposes, some procedure or task has a step with `action: discard` or `dry` and the same `in`;
    for steam one after the load is out (`unload`).
    Bad: boil, lift out, and the water stays in the pot.
    Good: a task at the end of the day with `action: discard` and `in: pot`.
    Source: common practice; instructions of vessels ask for it (from memory).
    """
    emptied = {
        placed.in_
        for whole in checked.derived.procedures.values()
        for placed in whole.steps
        if placed.action in EMPTIES and placed.in_ and not _with_load(whole, placed)
    }
    told: set[str] = set()
    for whole in checked.derived.procedures.values():
        level = whole.level_steps[0] if whole.level_steps else None
        vessel = level.step.in_ if level is not None and _heats_water(whole) else None
        if level is None or vessel is None or vessel in emptied or vessel in told:
            continue
        thing = checked.content.equipment.get(vessel)
        if thing is not None:
            told.add(vessel)
            yield Finding(
                level.step.place.at("in"),
                f"{whole.procedure.procedure} heats water in {thing.name} ({vessel}), and nothing"
                " says that it is emptied",
                "Put a step with “action: discard” and the same “in:” after it, or into a task.",
                (level.step.place, thing.place, whole.procedure.place),
            )


def _heats_water(whole: WholeProcedure) -> bool:
    if whole.route is None:
        return whole.instrument is None and whole.procedure.vessel is not None
    return whole.route.kind in {"boiling", "steam"}


def _with_load(whole: WholeProcedure, placed: PlacedStep) -> bool:
    """Return whether a step dries the load in its vessel, before the load is out."""
    later = whole.steps[placed.number :]
    return placed.action == "dry" and any(each.action == "unload" for each in later)
