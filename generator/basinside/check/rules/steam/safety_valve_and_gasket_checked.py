"""The rule safety-valve-and-gasket-checked."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.lacking import lacks
from basinside.check.rule import Finding, rule
from basinside.check.steam_runs import made_sure
from basinside.problem import Level


@rule(level=Level.STOP)
def check_safety_valve_and_gasket_checked(checked: Checked) -> Iterator[Finding]:
    """Safety valve and gasket are looked at before each run.

    Why: a valve that sticks lets a vessel burst, and a split gasket lets the load fail. An
    inspection of a hospital found a steam sterilizer that nobody looked after.
    Bad: the vessel is loaded as it stands.
    Good: `do: Lift the safety valve. Stuck, or gasket split? Stop.` with
    `makes_sure: [valve and gasket looked at]`.
    Source: a public list of hospital inspections, GDUJ11 (no routine maintenance); common
    practice for the look before each run.
    """
    for run in checked.steam_runs:
        if "valve and gasket looked at" not in made_sure(run.before):
            what = "no step before it looks at safety valve and gasket"
            yield lacks(run, what, "valve and gasket looked at")
