"""The rule apart-before-clean."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked, Sound
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.model.derived import PlacedStep
from basinside.problem import Level


@rule(level=Level.STOP)
def check_apart_before_clean(checked: Checked) -> Iterator[Finding]:
    """Parts that come off come off before the instrument is cleaned.

    Why: brush and water do not reach what lies under a ring or behind a valve. Which parts come
    off is written at the instrument as `take_apart`.
    Bad: clean, then take apart.
    Good: take apart, then clean with `parts_are: apart`.
    Source: CDC, Guideline for disinfection and sterilization in healthcare facilities, 2008, on
    cleaning (open hinges, take apart as far as designed).
    """
    for each in checked.sound:
        covered = {part.part for part in each.whole.parts}
        removable = [part for part in each.instrument.take_apart if part in covered]
        if removable:
            yield from _together(each, removable)


def _together(each: Sound, removable: list[str]) -> Iterator[Finding]:
    apart = False
    for placed in each.whole.steps:
        action = placed.action
        if action == "take apart":
            apart = True
        elif action == "assemble":
            apart = False
        elif action == "clean" and not (apart and placed.step.parts_are != "together"):
            yield _cleaned_whole(each, placed, removable, apart=apart)
            return


def _cleaned_whole(
    each: Sound, placed: PlacedStep, removable: list[str], *, apart: bool
) -> Finding:
    names = [part.shown_name for part in each.instrument.parts if part.part in removable]
    return Finding(
        placed.step.place.at("parts_are") if apart else placed.step.place,
        f"{each.name} cleans in {placed.step.step} what is still together: {listed(names)}",
        "Write “parts_are: apart”." if apart else "Put a step with “action: take apart” before it.",
        (each.whole.procedure.place, each.instrument.place),
    )
