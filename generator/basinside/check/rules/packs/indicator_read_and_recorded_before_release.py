"""The rule indicator-read-and-recorded-before-release."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.steam_runs import SteamRun, made_sure, written_in
from basinside.model.derived import PlacedStep
from basinside.problem import Level


@rule(level=Level.STOP)
def check_indicator_read_and_recorded_before_release(checked: Checked) -> Iterator[Finding]:
    """A load is released after its indicator was read and written down.

    Why: whoever releases a load unread hands out what may not be sterile; whoever does not write
    it down cannot tell later which loads were good.
    Bad: unload, store; or release, then look at the indicator.
    Good: a step with `makes_sure: [indicator read]` and one with `writes: [indicator]`, both
    before the step with `action: release` or in it.
    Source: CDC, Guideline for disinfection and sterilization in healthcare facilities, 2008,
    monitoring (no use of items when an indicator suggests inadequate processing); rule of a US
    county for what a load record holds.
    """
    for run in checked.steam_runs:
        releases = [placed for placed in run.after if placed.action == "release"]
        if not releases:
            yield Finding(
                run.start.step.place,
                f"{run.name} has no step that releases its load after {run.start.step.step}",
                "Put a step with “action: release” after the indicator is read.",
                (run.whole.procedure.place,),
            )
            continue
        if releases[0] in run.tasks:
            continue  # the task is asked for itself
        yield from _before(run, releases[0])


def _before(run: SteamRun, release: PlacedStep) -> Iterator[Finding]:
    until = run.until(release)
    for missing, said, word in (
        ("indicator read" not in made_sure(until), "read", "makes_sure: [indicator read]"),
        (
            "indicator" not in written_in((*until, *run.noted)),
            "written down",
            "writes: [indicator]",
        ),
    ):
        if missing:
            yield Finding(
                release.step.place,
                f"{run.name} releases its load in {release.step.step} before the indicator is"
                f" {said}",
                f"Say it in that step or before, and write “{word}” there.",
                (run.whole.procedure.place,),
            )
