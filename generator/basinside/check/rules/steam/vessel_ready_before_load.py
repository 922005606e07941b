"""The rule vessel-ready-before-load."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.model.derived import PlacedStep
from basinside.model.words import MakesSure
from basinside.problem import Level

_READY: Final[frozenset[MakesSure]] = frozenset(
    {
        "valve and gasket looked at",
        "regulator left alone",
        "water in the vessel",
        "indicator inside",
    }
)


@rule(level=Level.STOP)
def check_vessel_ready_before_load(checked: Checked) -> Iterator[Finding]:
    """A vessel is looked at and filled, and each pack has its indicator, before the load is in.

    Why: nobody sees water or gasket under a full rack, and a load that has to come out again is
    handled twice; so the look is left out.
    What looks after valve and gasket, regulator, water and indicators (`makes_sure`) stands before
    the last step with `action: load`, or in it.
    Bad: load the packs, then look at the valve.
    Good: look, fill to the mark, load.
    Source: common practice; vessels' instructions ask for it (from memory).
    """
    for run in checked.steam_runs:
        before = run.whole.steps[: run.start.number]
        loads = [placed.number for placed in before if placed.action == "load"]
        for placed in before[loads[-1] :] if loads else ():
            if not _READY.isdisjoint(placed.makes_sure) and placed is not run.start:
                yield _late(run.whole.procedure.procedure, run.whole.steps[loads[-1] - 1], placed)


def _late(name: str, load: PlacedStep, placed: PlacedStep) -> Finding:
    where = f"{name} looks in {placed.step.step} at what should be ready before {load.step.step}"
    return Finding(placed.step.place, where, "Put it before “action: load”.", (load.step.place,))
