"""The rule rinse-after-chemical."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked, Sound
from basinside.check.rinses import rinses, stays_on, unrinsed
from basinside.check.rule import Finding, rule
from basinside.model.derived import PlacedStep
from basinside.model.words import Action, at_least
from basinside.problem import Level

ENDS_WET: Final[frozenset[Action]] = frozenset(
    {"dry", "lubricate", "assemble", "test", "pack", "store", "release", "transport"}
)
"""What may not happen to a part while a chemical is still on it."""


@rule(level=Level.STOP)
def check_rinse_after_chemical(checked: Checked) -> Iterator[Finding]:
    """What gives the level is rinsed off, and the last rinse does not undo the level.

    Why: what is left of a disinfectant burns the next patient. Tap water after disinfection puts
    germs back: infections of a whole laparoscopy unit came from rinse water.
    A rinse is a step with `action: rinse` and no chemical. After high-level disinfection its
    water is `boiled` or `sterile`; after a cold sterilization it is `sterile`.
    Bad: expose in chlorine, then dry; or rinse after it with `water: drinking`.
    Good: expose in chlorine, rinse with `water: boiled`, dry.
    Source: IARC, Reference manual for screening, 2005, p.126 (boiled water, then air dry); CDC,
    Guideline for disinfection and sterilization in healthcare facilities, 2008 (rinse water).
    """
    for each in checked.sound:
        yield from _after_level(each)


def _after_level(each: Sound) -> Iterator[Finding]:
    """Yield findings for a bath that is not rinsed off, and for rinse water that undoes it."""
    left: PlacedStep | None = None
    given = False
    for placed in each.whole.steps:
        if placed.is_level_step:
            given = True
            left = placed if stays_on(placed) or each.route.kind == "chemical" else None
        elif not given:
            continue
        elif rinses(placed):
            left = None
            yield from _water(each, placed)
        elif left is not None and placed.action in ENDS_WET:
            yield unrinsed(each, left, f"before {placed.step.step}")
            return
    if left is not None:
        yield unrinsed(each, left, "in this procedure")


def _water(each: Sound, placed: PlacedStep) -> Iterator[Finding]:
    if not at_least(each.level, "high-level disinfection"):
        return
    good = {"sterile"} if each.level == "sterile" else {"sterile", "boiled"}
    water = placed.step.water
    if water not in good:
        used = f"{water} water" if water else "water of which it does not say what it is"
        yield Finding(
            placed.step.place.at("water"),
            f"{each.name} rinses in {placed.step.step} with {used}, which undoes {each.level}",
            f"Write “water: {'sterile' if each.level == 'sterile' else 'boiled'}”.",
            (each.whole.procedure.place, placed.step.place),
        )
