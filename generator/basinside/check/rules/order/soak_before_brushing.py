"""The rule soak-before-brushing."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.course import at_step
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.WARN)
def check_soak_before_brushing(checked: Checked) -> Iterator[Finding]:
    """A soak to loosen soil comes before the brush that takes it off.

    Why: what a soak loosens after the brushing stays on the parts, spread over all of them, and
    the bath of a soak is the dirtiest water of the day.
    In the cleaning stage a step with `action: soak` stands before the first with `action: clean`;
    a second soak may come between two that clean.
    Bad: brush, soak, rinse.
    Good: soak, brush, rinse.
    Source: CDC, Guideline for disinfection and sterilization in healthcare facilities, 2008, on
    cleaning (soaked before soil dries, then friction); common practice.
    """
    for each in checked.sound:
        cleaned = [
            placed
            for placed in each.whole.steps
            if placed.stage.stage == "cleaning" and placed.action in {"soak", "clean"}
        ]
        if len(cleaned) > 1 and cleaned[-1].step.action == "soak":
            brushed = next((one for one in cleaned if one.action == "clean"), None)
            if brushed is not None:
                yield at_step(
                    each,
                    cleaned[-1],
                    f"{each.name} soaks in {cleaned[-1].step.step} what was brushed in"
                    f" {brushed.step.step}, and nothing takes off what that loosens",
                    "Soak first, then brush.",
                )
