"""The rule water-in-vessel."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.lacking import lacks
from basinside.check.rule import Finding, rule
from basinside.check.steam_runs import made_sure
from basinside.problem import Level


@rule(level=Level.STOP)
def check_water_in_vessel(checked: Checked) -> Iterator[Finding]:
    """A vessel is filled with water to its mark before it is heated.

    Why: a vessel that boils dry makes no steam, burns the packs and can burst; one filled too high
    wets them.
    Bad: load, heat, start the time.
    Good: `do: Fill water to the mark.` with `makes_sure: [water in the vessel]`, before the step
    that starts the time.
    Source: common practice.
    """
    for run in checked.steam_runs:
        if "water in the vessel" not in made_sure(run.before):
            yield lacks(run, "no step before it fills in the water", "water in the vessel")
