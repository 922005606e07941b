"""The rule air-removal-test-only-where-vacuum."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.lacking import lacks
from basinside.check.rule import Finding, rule
from basinside.check.steam_runs import made_sure
from basinside.problem import Level


@rule(level=Level.STOP)
def check_air_removal_test_only_where_vacuum(checked: Checked) -> Iterator[Finding]:
    """The test of air removal is asked of vessels with a vacuum, and of no others.

    Why: the test with its pack of cloth shows how well a pump draws the air out. In a vessel that
    lets steam push the air out it always fails or shows nothing, and people learn to pass over it.
    A vessel with a vacuum is tested at the start of each day.
    Bad: `makes_sure: [air removal tested]` with a vessel of the kind `gravity steam`.
    Good: the same with one of the kind `vacuum steam`.
    Source: ISO 11140-4 (its scope leaves out sterilizers that draw no vacuum); HTM 2010 (vacuum
    sterilizers, daily, before the first load).
    """
    for run in checked.steam_runs:
        vessel = run.vessel
        if vessel is None:
            continue
        tests = [placed for placed in run.whole.steps if "air removal tested" in placed.makes_sure]
        if vessel.kind != "vacuum steam":
            for placed in tests:
                yield Finding(
                    placed.step.place,
                    f"{run.name} tests air removal in {placed.step.step}, and {vessel.vessel} has"
                    " no vacuum",
                    "Take the test out; steady steam drives the air out of this vessel.",
                    (run.whole.procedure.place,),
                )
        elif "air removal tested" not in made_sure(run.before):
            what = f"no step before it tests that {vessel.vessel} draws its air out"
            yield lacks(run, what, "air removal tested")
