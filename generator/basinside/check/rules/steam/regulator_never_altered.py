"""The rule regulator-never-altered."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.lacking import lacks
from basinside.check.rule import Finding, rule
from basinside.check.saying import amount
from basinside.check.steam_runs import made_sure
from basinside.problem import Level


@rule(level=Level.NEVER)
def check_regulator_never_altered(checked: Checked) -> Iterator[Finding]:
    """Nobody alters, loads or ties down what holds a vessel's pressure.

    Why: a safety valve that is tied down and a weight that is made heavier are the last things
    before a vessel bursts. Where air is thin a cook is tempted to help a weight along; the answer
    is a vessel that is marked for more.
    Each run says so, itself or in the task that it leads to, and no weight lifts above the mark.
    Bad: `do: Add a second weight` to reach the temperature.
    Good: `do: Never load or tie down the valve.` with `makes_sure: [regulator left alone]`.
    Source: common practice; the needed pressure never goes above the vessel's mark.
    """
    for run in checked.steam_runs:
        if "regulator left alone" not in made_sure((*run.before, run.start, *run.after)):
            what = "nothing says that weight, valve and regulator are left as they are"
            yield lacks(run, what, "regulator left alone")
    handbook = checked.content.handbook
    for vessel in handbook.clinic.vessels if handbook else ():
        regulator = vessel.regulator
        mark = regulator.marked_working_pressure if regulator else None
        lifts = regulator.lifts_at if regulator else None
        if regulator and mark and lifts and lifts.kind is mark.kind and lifts > mark:
            yield Finding(
                regulator.place.at("lifts_at"),
                f"the weight of {vessel.vessel} lifts at {amount(lifts)} and its mark is"
                f" {amount(mark)}: it was altered, or it belongs to another vessel",
                "Take the vessel out of use until the caretaker has its own weight on it.",
            )
