"""The rule loaded-before-time."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.task_steps import at_its_step, first_of
from basinside.model.derived import LEVEL_STAGES, PlacedStep, WholeProcedure
from basinside.model.words import Action, MakesSure
from basinside.problem import Level

LOADS: Final[frozenset[MakesSure]] = frozenset({"all under", "room for steam"})
"""A level step that sees to it loads as well."""
TIMES: Final[frozenset[Action]] = frozenset({"expose", "hold"})


@rule(level=Level.STOP)
def check_loaded_before_time(checked: Checked) -> Iterator[Finding]:
    """Everything is in, or wet all over, before a time starts, and what is in gets its time.

    Why: a time that is started on an empty pot counts for nothing, and parts that are put in
    without a clock come out as they were.
    In a disinfection or sterilization stage a step with `action: load` stands before the first
    `expose` or `hold`, or the level step loads itself (`makes_sure: [all under]` or
    `[room for steam]`); for `kind: wiping`, one with `action: wipe` and the route's chemical. Packs
    are made before they are loaded, and the vessel is closed (`handle` with the same `in`) after it
    and before its time. A task that the procedure leads to (`see`) may load. What is
    loaded is exposed after it.
    Bad: expose, with nothing that says what goes in; expose, then load.
    Good: `action: load`, then `action: expose`.
    Source: IARC, Reference manual for screening, 2005, p.130 (all of it under, then the time).
    """
    for whole in checked.derived.procedures.values():
        found = _not_in(checked, whole)
        if found is not None:
            yield found


def _not_in(checked: Checked, whole: WholeProcedure) -> Finding | None:
    name = whole.procedure.procedure
    in_level = [each for each in whole.steps if each.stage.stage in LEVEL_STAGES]
    level = first_of(in_level, "expose")
    load = first_of(in_level, "load")
    if load is not None:
        pack = first_of(whole.steps[load.number :], "pack")
        if pack is not None:
            message = f"{name} loads in {load.step.step} what it packs only in {pack.step.step}"
            return at_its_step(whole, load, message, "Pack first.")
    if level is None:
        if load is None:
            return None
        message = f"{name} loads in {load.step.step} what never gets its time"
        return at_its_step(whole, load, message, "Put a step with “action: expose” after it.")
    if whole.route is not None and whole.route.kind == "wiping":
        return _not_wiped(whole, level, whole.route.agent)
    start = first_of(in_level, *TIMES)
    by_hand = _closed_late(in_level, level, load)
    if by_hand is not None:
        message = f"{name} goes on at the vessel in {by_hand.step.step}, out of its place between"
        return at_its_step(
            whole, by_hand, f"{message} loading and heating", "Load, close it, then heat it."
        )
    if start is None or (load is not None and load.number < start.number):
        return None
    itself = not LOADS.isdisjoint(level.step.makes_sure) and start is level
    if itself or (load is None and _task_loads(checked, level)):
        return None
    message = f"{name} starts a time in {start.step.step} before anything is loaded"
    return at_its_step(whole, start, message, "Put a step with “action: load” before it.")


def _closed_late(
    in_level: Sequence[PlacedStep], level: PlacedStep, load: PlacedStep | None
) -> PlacedStep | None:
    """Return what is done by hand at the vessel before it is loaded, or while it is hot."""
    heats = next((placed for placed in in_level if placed.action in TIMES), level)
    first = load.number if load is not None else 0
    for placed in in_level:
        step = placed.step
        at_vessel = placed.action == "handle" and placed.in_ is not None and step.agent is None
        early_or_late = not first <= placed.number <= heats.number
        if at_vessel and placed.in_ == level.step.in_ and early_or_late:
            return placed
    return None


def _not_wiped(whole: WholeProcedure, level: PlacedStep, agent: str | None) -> Finding | None:
    for placed in whole.steps[: level.number - 1]:
        if placed.action == "wipe" and placed.step.agent == agent:
            return None
    return at_its_step(
        whole,
        level,
        f"{whole.procedure.procedure} starts the time in {level.step.step} before anything is"
        " wiped with what gives the level",
        "Put a step with “action: wipe” and the route's “agent:” before it.",
    )


def _task_loads(checked: Checked, level: PlacedStep) -> bool:
    """Return whether the step leads to a task that gives the level, which is asked itself."""
    task = checked.derived.procedures.get(level.step.see) if level.step.see else None
    return task is not None and any(each.is_level_step for each in task.steps)
