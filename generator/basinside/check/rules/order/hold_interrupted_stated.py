"""The rule hold-interrupted-stated."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.STOP)
def check_hold_interrupted_stated(checked: Checked) -> Iterator[Finding]:
    """Every time that is held says what an interruption means.

    Why: the flame goes out, a part floats up, somebody adds a cup of cold water. Who has not been
    told goes on counting, and the load has had half its time.
    Bad: a hold with `from:` only.
    Good: `if_interrupted: Start the time again from steady bubbles.`
    Source: common practice.
    """
    for whole in checked.derived.procedures.values():
        for placed in whole.steps:
            hold = placed.hold
            if hold is not None and hold.if_interrupted is None:
                name, step = whole.procedure.procedure, placed.step.step
                yield Finding(
                    hold.place,
                    f"{name} does not say what to do when the time in {step} is broken off",
                    "Write it in “if_interrupted:”.",
                    (whole.procedure.place, placed.step.place),
                )
