"""The rule point-of-use-liquid."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked, Sound
from basinside.check.course import at_step, before_cleaning
from basinside.check.moist import MOISTENS
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.model.derived import PlacedStep
from basinside.model.equipment import Agent
from basinside.model.words import Family
from basinside.problem import Level

ONLY_BY_CHOICE: Final[frozenset[Family]] = frozenset({"chlorine", "aldehyde"})
EARLY: Final = frozenset({"point of use", "preparation"})


@rule(level=Level.STOP)
def check_point_of_use_liquid(checked: Checked) -> Iterator[Finding]:
    """The liquid that keeps soiled parts moist is named, and is one that does them no harm.

    Why: salt pits steel. Chlorine is used up by blood, rusts metal, and the soak is taken for
    disinfection; an aldehyde fixes blood for good. Where sources differ about a soak in chlorine
    the clinic decides by name: the step then has that `choice`.
    Which liquids an instrument may be kept moist with, and which never, stands at it as
    `keep_moist_with`; what is in its `never` no choice can allow. A soak in the cleaning stage is
    asked too, as long as nothing has been cleaned; there detergent has its place.
    Bad: soak in saline; soak in chlorine because it was always done; wet, without saying with what.
    Good: `action: wet` with `water: drinking`.
    Source: CDC, Guideline for disinfection and sterilization in healthcare facilities, 2008, on
    cleaning and table 5 (aldehydes fix blood); a soak in chlorine first is disputed.
    """
    for each in checked.sound:
        for placed in before_cleaning(each):
            if placed.action in MOISTENS:
                said = _unfit(each, placed)
                if said:
                    message = f"{each.name} in {placed.step.step} {said[0]}"
                    yield at_step(each, placed, message, said[1], said[2])


def _unfit(each: Sound, placed: PlacedStep) -> tuple[str, str, str] | None:
    """Return what is wrong with the liquid of a step, its mend, and the field that is wrong."""
    step, agent = placed.step, placed.agent
    verb = "keeps the parts moist"
    early = placed.stage.stage in EARLY
    if agent is None:
        if step.water or placed.action == "wipe" or not early:
            return None
        return f"{verb} and does not say with what", "Write “water: drinking”.", ""
    if agent.family == "saline":
        return f"{verb} with {agent.name}, which pits metal", _WATER, "agent"
    moist = each.instrument.keep_moist_with
    if moist and _named(agent, moist.never):
        said = f"{verb} with {agent.name}, which is forbidden for {each.instrument.name}"
        return said, _WATER, "agent"
    if agent.family in ONLY_BY_CHOICE:
        if step.choice:
            return None
        why = "blood uses it up" if agent.family == "chlorine" else "it fixes blood"
        said = f"{verb} with {agent.name}, which nobody has decided here; {why}"
        return said, "Name a choice at the step, or use water.", "agent"
    if moist and early and agent.family != "water" and not _named(agent, moist.use):
        said = f"{verb} with {agent.name}; {each.instrument.name} asks for {listed(moist.use)}"
        return said, _WATER, "agent"
    return None


_WATER: Final = "Use water instead of it."


def _named(agent: Agent, liquids: tuple[str, ...]) -> bool:
    return agent.agent in liquids or agent.family in liquids
