"""The rule inspect-before-pack."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.course import at_step, pack_for_level
from basinside.check.rule import Finding, rule
from basinside.model.derived import LEVEL_STAGES, PlacedStep
from basinside.problem import Level


@rule(level=Level.STOP)
def check_inspect_before_pack(checked: Checked) -> Iterator[Finding]:
    """Cleaned parts are looked at before they are packed, or, unpacked, before their level.

    Why: a pack hides what was not washed off and what is cracked, and heat bakes soil on. It is
    the last look before the patient.
    What counts is a step with `action: inspect` between the rinse after the cleaning and the pack
    (or the level), outside the disinfection and sterilization stages, where the vessel is
    looked at.
    Bad: rinse, dry, pack.
    Good: rinse, dry, inspect, pack.
    Source: CDC, Guideline for disinfection and sterilization in healthcare facilities, 2008, on
    cleaning; Tosh et al., Infection Control and Hospital Epidemiology, 2011 (tissue left in
    hollow instruments).
    """
    for each in checked.sound:
        if not each.level_steps or each.level_steps[0].before == "soiled":
            continue
        pack = pack_for_level(each)
        goal = each.level_steps[0] if pack is None else pack
        if goal.before == "soiled":
            continue  # told by soiled-clean-processed
        if not _looked(each.whole.steps[: goal.number - 1]):
            verb = "exposes" if pack is None else "packs"
            yield at_step(
                each,
                goal,
                f"{each.name} {verb} in {goal.step.step} what nobody has looked at since it was"
                " cleaned",
                "Put a step with “action: inspect” before it.",
            )


def _looked(steps: tuple[PlacedStep, ...]) -> bool:
    """Return whether the parts were looked at after their last cleaning and its first rinse."""
    looked = rinsed = False
    for placed in steps:
        action = placed.action
        if action == "clean":
            looked = rinsed = False
        elif action == "rinse":
            rinsed = True
        elif action == "inspect" and rinsed and placed.stage.stage not in LEVEL_STAGES:
            looked = True
    return looked
