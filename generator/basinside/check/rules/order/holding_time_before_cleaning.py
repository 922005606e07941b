"""The rule holding-time-before-cleaning."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.course import at_step, before_cleaning
from basinside.check.moist import keeps_moist
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.STOP)
def check_holding_time_before_cleaning(checked: Checked) -> Iterator[Finding]:
    """How long soiled parts may wait for cleaning at most is said.

    Why: moist parts dry in the end, soil sets hard, and germs grow in what stays wet over night.
    Without a longest time the box of the evening is found in the morning.
    A step before the cleaning has `longest:` with a value, and what comes then in `before:`.
    Bad: keep it moist until somebody has time.
    Good: `longest: {figure: soiled.wait, before: cleaning}` at the step that keeps it moist.
    Source: common practice; the maker's instructions where they name a time.
    """
    for each in checked.sound:
        moist = keeps_moist(each)
        waits = before_cleaning(each)
        if moist and waits and not any(placed.step.longest for placed in waits):
            yield at_step(
                each,
                moist[-1],
                f"{each.name} does not say how long the parts may wait for cleaning after"
                f" {moist[-1].step.step}",
                "Write “longest:” with a value, and “before: cleaning”.",
            )
