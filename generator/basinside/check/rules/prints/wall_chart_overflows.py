"""The rule wall-chart-overflows."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.model.derived import PlacedStep
from basinside.problem import Level


@rule(level=Level.WARN, of_all=True)
def check_wall_chart_overflows(checked: Checked) -> Iterator[Finding]:
    """A wall chart fits on one sheet at a size that is read at arm's length.

    Why: what runs onto a second sheet is not on the wall, and a smaller letter is not read with
    wet gloves on. So the chart is never made smaller than 14 pt: its words are made fewer. What is
    counted is a little more than what a browser sets, on what A4 and Letter have in common.
    Bad: twenty-five steps whose `wall` sentences have seventy letters each.
    Good: `wall: Rinse each part for {{ rinse.time }}.`, or two procedures instead of one.
    Source: common practice.
    """
    for name, chart in checked.derived.too_long.items():
        whole = checked.derived.procedures[name]
        yield Finding(
            whole.procedure.place,
            f"the wall chart of {name} is {chart.over_percent} % too long for one sheet at"
            f" {chart.points} pt",
            _mend(whole.steps),
        )


def _mend(steps: tuple[PlacedStep, ...]) -> str:
    """Return which sentence to shorten first."""
    longest = max(steps, key=lambda placed: len(placed.step.wall or placed.step.do)).step
    without = sum(1 for placed in steps if placed.step.wall is None)
    if longest.wall is not None:
        return f"Shorten the “wall” of {longest.step} first, or part the procedure in two."
    return f"Write a short “wall” for the {without} steps that have none, for {longest.step} first."
