"""The rule taken-out-after-time."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.task_steps import at_its_step
from basinside.model.derived import PlacedStep, WholeProcedure
from basinside.model.words import Action, MakesSure
from basinside.problem import Level

TAKES_OUT: Final[frozenset[Action]] = frozenset({"unload", "rinse"})
NEEDS_OUT: Final[frozenset[Action]] = frozenset(
    {"cool", "dry", "count", "lubricate", "assemble", "test", "label", "store", "release"}
)
"""What is done to things that are no longer in pot, bath or vessel."""
SEEN_OUTSIDE: Final[frozenset[MakesSure]] = frozenset({"indicator read", "wet or torn set aside"})
IN_VESSEL: Final[frozenset[Action]] = frozenset({"cool", "dry"})


@rule(level=Level.STOP)
def check_taken_out_after_time(checked: Checked) -> Iterator[Finding]:
    """What had its time is taken out before anything else is done to it.

    Why: steel that is left in the pot as it cools rusts, and parts that are forgotten in a bath
    swell. How things come out, with what and into what, is where germs come back.
    After the level step of boiling, bath, steam or oven comes `action: unload`, or a `rinse` to
    which the parts are lifted, before they cool, dry, are counted or put away. They may cool and
    dry in the pot or vessel itself: the same `in` as in the level step, or none for steam and dry
    heat; a pot is empty of water then. Who cools them in heat gloves or with a tool lifts them out
    in that step. What keeps the time going (`action: hold` without a time of its own) comes
    between, and nothing is looked at in a vessel (`makes_sure: [indicator read]`). A task that the
    procedure leads to (`see`) may hold these steps. A wipe has nothing to take out.
    Bad: expose in the pot, then dry in the tray.
    Good: expose, keep boiling, `action: unload` with boiled forceps, cool, dry.
    Source: IARC, Reference manual for screening, 2005, appendix C (lifted out with forceps that
    are disinfected themselves).
    """
    for whole in checked.derived.procedures.values():
        if whole.route is None or whole.route.kind != "wiping":
            levels = [placed for placed in whole.steps if placed.is_level_step]
            if levels:
                yield from _left_in(checked, whole, levels[-1])


def _left_in(checked: Checked, whole: WholeProcedure, level: PlacedStep) -> Iterator[Finding]:
    name = whole.procedure.procedure
    task = checked.derived.procedures.get(level.step.see) if level.step.see else None
    if task is not None and any(each.is_level_step for each in task.steps):
        return  # the task is asked itself
    later = whole.steps[level.number :]
    out: PlacedStep | None = None
    cooled: PlacedStep | None = None
    early = next((each for each in whole.steps[: level.number] if _keeps_time(level, each)), None)
    if early is not None:
        yield at_its_step(
            whole,
            early,
            f"{name} goes on with the time in {early.step.step} before it starts in"
            f" {level.step.step}",
            "Put it after that step.",
        )
    for placed in later:
        step = placed.step
        if out is None and placed.action in TAKES_OUT and _of_the_load(level, placed):
            out = placed
        elif out is None and placed.action in IN_VESSEL and _inside(whole, level, placed):
            cooled = placed
            out = None if _in_heat(whole) else placed
        elif out is None and _lifts(placed):
            out = placed
        elif out is None and _needs_out(placed):
            yield at_its_step(
                whole,
                placed,
                f"{name} goes on with {step.step} before it takes out what had its time in"
                f" {level.step.step}",
                "Put a step with “action: unload” before it.",
            )
            return
        over = out or cooled
        if over is not None and _keeps_time(level, placed):
            yield at_its_step(
                whole,
                placed,
                f"{name} goes on with the time in {step.step} after it was over in"
                f" {over.step.step}",
                "Put it before that step.",
            )


def _needs_out(placed: PlacedStep) -> bool:
    looks = placed.action == "inspect" and not SEEN_OUTSIDE.isdisjoint(placed.makes_sure)
    return looks or placed.action in NEEDS_OUT


def _keeps_time(level: PlacedStep, placed: PlacedStep) -> bool:
    return placed.action == "hold" and placed.hold is None and placed.in_ in {None, level.step.in_}


def _of_the_load(level: PlacedStep, placed: PlacedStep) -> bool:
    """Return whether a rinse is of what comes out, and not of a surface wiped meanwhile."""
    return placed.action == "unload" or level.step.agent is not None


def _inside(whole: WholeProcedure, level: PlacedStep, placed: PlacedStep) -> bool:
    same = placed.in_ == level.step.in_
    return same or (_in_heat(whole) and placed.in_ is None)


def _in_heat(whole: WholeProcedure) -> bool:
    """Return whether things cool and dry in their vessel and come out only after it."""
    return whole.route is None or whole.route.kind in {"steam", "dry heat"}


def _lifts(placed: PlacedStep) -> bool:
    step = placed.step
    return placed.action == "cool" and ("waterproof heat gloves" in step.wear or bool(placed.with_))
