"""The rule soiled-clean-processed."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked, Sound
from basinside.check.rule import Finding, rule
from basinside.model.derived import PlacedStep
from basinside.model.words import Action
from basinside.problem import Level

BEFORE_CLEAN: Final[frozenset[Action]] = frozenset({"wet", "soak", "take apart", "clean"})
"""What is done to soiled parts; later it makes clean ones soiled again."""
AFTER_CLEAN: Final[frozenset[Action]] = frozenset({"lubricate", "assemble", "pack"})
"""What is done to clean parts; earlier it shuts soil in."""
AFTER_LEVEL: Final[frozenset[Action]] = frozenset({"store", "release"})
WRAPPED_KINDS: Final = frozenset({"steam", "dry heat"})


@rule(level=Level.STOP)
def check_soiled_clean_processed(checked: Checked) -> Iterator[Finding]:
    """Steps go from soiled to clean to processed and never back.

    Why: a wet brush, a soiled basin or taking apart with used gloves undoes the level, and what
    is packed, put together or stored too early shuts soil or germs in.
    Parts are soiled until the last rinse of the cleaning ends, clean until the step that gives
    the level ends, and processed after. Looking, testing and drying may come before the level and
    again. Packs for steam are made of clean parts, before the level; parts that were put together
    for a test come apart again before the level, unless that step says `parts_are: together`.
    Bad: expose, then take apart and clean.
    Good: take apart, clean, rinse, expose, assemble, store.
    Source: common practice.
    """
    for each in checked.sound:
        for placed in each.whole.steps:
            said = _against(each, placed)
            if said:
                yield Finding(
                    placed.step.place.at("action"),
                    f"{each.name} says “{placed.action}” in {placed.step.step} {said}",
                    _mend(placed),
                    (placed.step.place, each.whole.procedure.place),
                )


def _mend(placed: PlacedStep) -> str:
    if placed.action == "pack":
        return "Move it after that step, or name a route for what is wrapped."
    if placed.before == "processed":
        return "Move it before the cleaning, or give the level again after it."
    if placed.before == "soiled":
        return "Move it after the last rinse of the cleaning."
    if placed.action in BEFORE_CLEAN:
        return "Move it before that rinse, or rinse again after it."
    if placed.action == "assemble":
        return "Move it after that step, or take them apart again before it."
    return "Move it after that step."


def _against(each: Sound, placed: PlacedStep) -> str:
    """Return why an action does not fit the state in which its step finds the parts."""
    action, state = placed.action, placed.before
    if action in BEFORE_CLEAN and state == "processed":
        return f"after the step that gives {each.level}; that makes the parts soiled again"
    if action in BEFORE_CLEAN and state == "clean":
        if action == "take apart" and _was_together(each, placed):
            return ""
        return "after the last rinse of the cleaning"
    if action in AFTER_CLEAN and state == "soiled":
        return "while the parts are still soiled" if _cleaned(each) else ""
    if action in AFTER_LEVEL and _before_level(each, placed):
        return f"before the step that gives {each.level}"
    if action == "pack" and state == "clean" and _gives_level(each):
        wrapped = each.route.wrapped or each.route.kind in WRAPPED_KINDS
        return "" if wrapped else f"before the step that gives {each.level}"
    if action == "assemble" and state == "clean" and _gives_level(each):
        return _stays_together(each, placed)
    return ""


def _cleaned(each: Sound) -> bool:
    """Whether the parts are ever clean; where they never are, clean-before-level says so."""
    return any(placed.before != "soiled" for placed in each.whole.steps)


def _gives_level(each: Sound) -> bool:
    return bool(each.level_steps)


def _before_level(each: Sound, placed: PlacedStep) -> bool:
    """Whether the level is given only after this step."""
    return _gives_level(each) and placed.number < each.level_steps[0].number


def _was_together(each: Sound, placed: PlacedStep) -> bool:
    """Whether the clean parts were put together before this step."""
    return any(
        other.action == "assemble" and other.before == "clean" and other.number < placed.number
        for other in each.whole.steps
    )


def _stays_together(each: Sound, placed: PlacedStep) -> str:
    """Return why parts put together now go together into the step that gives the level."""
    for other in each.whole.steps[placed.number :]:
        if other.action == "take apart":
            return ""
        if other.is_level_step:
            if other.step.parts_are == "together":
                return ""
            return f"and they stay together in {other.step.step}, which gives {each.level}"
    return ""
