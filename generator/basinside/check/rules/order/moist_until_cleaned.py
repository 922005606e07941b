"""The rule moist-until-cleaned."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.course import at_procedure, not_applicable
from basinside.check.moist import keeps_moist
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.STOP)
def check_moist_until_cleaned(checked: Checked) -> Iterator[Finding]:
    """What was used is kept moist from the point of use until it is cleaned.

    Why: blood that has dried is hard to wash off, and soil that stays on shields germs from all
    that follows.
    What counts is a step in the stage `point of use` with `action: wet`, `soak`, `wipe` or
    `rinse`; or that stage says in `not_applicable` why nothing has to wait.
    Bad: use, carry dry, clean an hour later.
    Good: wipe and wet it with clean water, carry it in a closed box, clean.
    Source: CDC, Guideline for disinfection and sterilization in healthcare facilities, 2008, on
    cleaning (rinse or soak before blood dries).
    """
    for each in checked.sound:
        cleans = any(placed.action == "clean" for placed in each.whole.steps)
        if cleans and not keeps_moist(each) and not not_applicable(each, "point of use"):
            yield at_procedure(
                each,
                f"{each.name} does not keep the parts moist from use until they are cleaned",
                "Put a step with “action: wet” and its water in the stage “point of use”.",
            )
