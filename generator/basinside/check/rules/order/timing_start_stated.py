"""The rule timing-start-stated."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.STOP)
def check_timing_start_stated(checked: Checked) -> Iterator[Finding]:
    """Every time that is held says from when it counts.

    Why: a time that starts when the first part goes in, or before the water boils, is too short
    for the last part.
    Bad: `hold: {figure: boil.hold}`.
    Good: `from: steady bubbles with everything under` beside the figure.
    Source: IARC, Reference manual for screening, 2005, p.130 (the time starts at a rolling boil,
    with everything under).
    """
    for whole in checked.derived.procedures.values():
        for placed in whole.steps:
            hold = placed.hold
            if hold is not None and hold.from_ is None:
                name, step = whole.procedure.procedure, placed.step.step
                yield Finding(
                    hold.place,
                    f"{name} does not say from when the time in {step} counts",
                    "Write in “from:” what is seen when the time starts.",
                    (whole.procedure.place, placed.step.place),
                )
