"""The rule failed-load-told."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.model.derived import PlacedStep, WholeProcedure
from basinside.problem import Level


@rule(level=Level.STOP)
def check_failed_load_told(checked: Checked) -> Iterator[Finding]:
    """What is done with a load that failed stands in the steps: it is marked, and it is told.

    Why: packs of a failed load look like all others. One that lies among good ones without a mark
    is used, and where nobody is told, the vessel goes on failing.
    After the level step of a run, in its own steps or in the task that it leads to, one with
    `action: label` marks what failed and one with `action: report` tells somebody, after the
    indicator is read and before the release.
    Bad: read the indicator, release.
    Good: read the indicator; `action: label` with “NOT STERILE”; `action: report`; release.
    Source: CDC, Guideline for disinfection and sterilization in healthcare facilities, 2008, on
    recalls; common practice for the mark.
    """
    for run in checked.steam_runs:
        if any(placed.is_level_step for placed in run.noted):
            continue  # the task that it leads to is asked itself
        done = {placed.action for placed in (*_between(run.whole, run.start), *run.noted)}
        missing = []
        if "label" not in done:
            missing.append("how a load that failed is marked")
        if "report" not in done:
            missing.append("who is told of it")
        if missing:
            yield Finding(
                run.start.step.place,
                f"{run.name} does not say {' and '.join(missing)}",
                "Put steps with “action: label” and “action: report” after the indicator is read.",
                (run.whole.procedure.place,),
            )


def _between(whole: WholeProcedure, start: PlacedStep) -> tuple[PlacedStep, ...]:
    """Return a run's own steps after its indicator is read and before it is released."""
    later = whole.steps[start.number :]
    read = [n for n, placed in enumerate(later) if "indicator read" in placed.makes_sure]
    steps = later[read[0] + 1 :] if read else later
    ends = [n for n, placed in enumerate(steps) if placed.action == "release"]
    return steps[: ends[0]] if ends else steps
