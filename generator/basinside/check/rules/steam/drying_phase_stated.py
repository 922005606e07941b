"""The rule drying-phase-stated."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.model.derived import PlacedStep
from basinside.problem import Level


@rule(level=Level.STOP)
def check_drying_phase_stated(checked: Checked) -> Iterator[Finding]:
    """Wrapped loads dry in the vessel for a stated time before they come out.

    Why: a pack that comes out damp lets germs through its wrap at the first touch. Tables give a
    drying time beside each cycle.
    The load dries before it is taken out (`unload`) and before it is released.
    Bad: wait for zero, then unload the packs.
    Good: `action: dry` with `hold: {figure: steam.drying, ...}` between the two.
    Source: CDC, Guideline for disinfection and sterilization in healthcare facilities, 2008,
    table 7 (15 to 30 minutes after a gravity cycle).
    """
    for run in checked.steam_runs:
        own = run.whole.steps[run.start.number :]
        if run.wrapped and not (_dries_inside(own) or _dries_inside(run.tasks)):
            yield Finding(
                run.start.step.place,
                f"{run.name} does not say how long its packs dry after {run.start.step.step}",
                "Put a step with “action: dry” and “hold:” after it.",
                (run.whole.procedure.place,),
            )


def _dries_inside(steps: Iterable[PlacedStep]) -> bool:
    """Return whether the load dries before it is out or released."""
    for placed in steps:
        if _dries(placed):
            return True
        if placed.action in {"unload", "release"}:
            return False
    return False


def _dries(placed: PlacedStep) -> bool:
    step = placed.step
    return placed.action == "dry" and (placed.hold is not None or step.wait is not None)
