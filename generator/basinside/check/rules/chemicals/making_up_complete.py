"""The rule making-up-complete."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from basinside.check.checked import Checked
from basinside.check.chemicals import DISINFECTANTS
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.check.task_steps import at_its_step, tasks
from basinside.model.derived import PlacedStep, WholeProcedure
from basinside.model.words import Action
from basinside.problem import Level


@rule(level=Level.STOP)
def check_making_up_complete(checked: Checked) -> Iterator[Finding]:
    """A task that makes up a bath goes from the label of the bottle to the end of the bath.

    Why: the same name stands on bottles of different strength; soap left in the basin uses up
    chlorine; and an open basin fumes day and night. Routine baths in a neonatal ward did nothing
    until the way of making them was mended.
    Before the `mix` of a disinfectant a step reads the bottle (`action: inspect`) and rinses the
    basin (`rinse` with the same `in`), when the old bath is out of it and before anything is poured
    in, all of which comes before the last of it is mixed. After it the strength is measured, the
    bath is closed and kept (`store` with the same `in`), hands are washed after that and after its
    label, and it is written down. Somewhere a bath is poured away (`discard`), first or last.
    Bad: put on gloves, mix, label.
    Good: read, rinse, mix, measure strength, label, store, wash hands, record, discard.
    Source: White and others, Global Health Science and Practice 2025;13(1):e2300398 (bag-masks in
    chlorine); HICPAC sample audit tool (strip before each use).
    """
    for whole in tasks(checked):
        mixes = [
            placed
            for placed in whole.steps
            if placed.action == "mix"
            and placed.agent is not None
            and placed.agent.family in DISINFECTANTS
        ]
        if mixes:
            missing = [*_before(whole, mixes[0]), *_after(whole, mixes)]
            if missing:
                yield at_its_step(
                    whole,
                    mixes[0],
                    f"{whole.procedure.procedure} makes up a bath in {mixes[0].step.step} without"
                    f" {listed(missing)}",
                    "Put a step for it where it belongs.",
                )


def _before(whole: WholeProcedure, mix: PlacedStep) -> Iterator[str]:
    earlier = whole.steps[: mix.number - 1]
    if not _has(earlier, "inspect"):
        yield "reading the bottle first"
    filled = next((each for each in earlier if _fills(each, mix.step.in_)), mix)
    emptied = [each.number for each in earlier if _pours_away(each, mix)]
    rinses = whole.steps[max(emptied, default=0) : filled.number - 1]
    if not _has(rinses, "rinse", basin=mix.step.in_):
        yield "rinsing the empty basin before anything is in it"
    if any(_fills(each, mix.step.in_) for each in whole.steps[mix.number :]):
        yield "pouring in all of it before"


def _fills(placed: PlacedStep, basin: str | None) -> bool:
    """Return whether a step pours something into the basin that stays in it."""
    step = placed.step
    return placed.in_ == basin and placed.action == "handle" and bool(step.water or step.agent)


def _after(whole: WholeProcedure, mixes: Sequence[PlacedStep]) -> Iterator[str]:
    mix = mixes[0]
    baths = [each.number for each in mixes if each.step.strength]
    if not _has(whole.steps[max(baths, default=mix.number) :], "measure strength"):
        yield "measuring its strength"
    later = whole.steps[mixes[-1].number :]
    if not _has(later, "store", basin=mix.step.in_):
        yield "putting it away closed"
    kept = [each.number for each in whole.steps if each.action in {"store", "label"}]
    if not _has(whole.steps[max((*kept, mixes[-1].number)) :], "wash hands"):
        yield "washing hands after it"
    if not _has(later, "record"):
        yield "writing it down"
    away = [each.number for each in whole.steps if _pours_away(each, mix)]
    if not away:
        yield "pouring the old one away"
    elif away[-1] > mix.number and kept and away[-1] < max(kept):
        yield "keeping it until it is poured away"


def _pours_away(placed: PlacedStep, mix: PlacedStep) -> bool:
    return placed.action == "discard" and placed.in_ == mix.step.in_


def _has(steps: Sequence[PlacedStep], action: Action, basin: str | None = None) -> bool:
    return any(each.action == action and (basin is None or each.in_ == basin) for each in steps)
