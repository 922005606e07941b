"""How a procedure runs: what comes before and after its level, as several rules ask it."""

from __future__ import annotations

from typing import Final

from basinside.check.checked import Sound
from basinside.check.rule import Finding
from basinside.model.derived import PlacedStep
from basinside.model.words import Action, at_least

WETS: Final[frozenset[Action]] = frozenset({"wet", "soak", "clean", "rinse"})
"""What leaves water on the parts."""
WETS_AS_LEVEL: Final = frozenset({"boiling", "chemical"})
"""Kinds of route out of which the parts come dripping."""

THROUGH_WRAP: Final = frozenset({"steam", "dry heat"})


def after_level(each: Sound) -> tuple[PlacedStep, ...]:
    """Return the steps after the last that gives the level; none when none does."""
    given = each.level_steps
    return each.whole.steps[given[-1].number :] if given else ()


def cleaned_at(each: Sound) -> int:
    """Return the number of the first step that cleans; 0 where nothing is cleaned."""
    actions = each.whole.actions
    return actions.index("clean") + 1 if "clean" in actions else 0


def before_cleaning(each: Sound) -> tuple[PlacedStep, ...]:
    """Return the steps before the parts are cleaned; none where nothing is cleaned."""
    number = cleaned_at(each)
    return each.whole.steps[: number - 1] if number else ()


def first_pack(each: Sound) -> PlacedStep | None:
    """Return the step in which the parts are packed."""
    return each.whole.first("pack")


def pack_before_level(each: Sound) -> PlacedStep | None:
    """Return the step that packs the parts before their level, rightly or not, or None."""
    pack, given = first_pack(each), each.level_steps
    return pack if pack is not None and given and pack.number < given[0].number else None


def pack_for_level(each: Sound) -> PlacedStep | None:
    """Return the step that packs the parts for a level given in the pack, or None.

    A pack that goes into a bath is told by soiled-clean-processed.
    """
    through = each.route.wrapped or each.route.kind in THROUGH_WRAP
    return pack_before_level(each) if through else None


def bare_after_level(each: Sound) -> bool:
    """Return whether parts disinfected highly or sterilized lie open to hands and air."""
    return at_least(each.level, "high-level disinfection") and pack_before_level(each) is None


def with_level(each: Sound) -> str:
    """Return what can be said of parts that have their level: “is sterile”, “has …”."""
    return "is sterile" if each.level == "sterile" else f"has {each.level}"


def not_applicable(each: Sound, stage: str) -> bool:
    """Return whether a procedure says why it does nothing in a stage."""
    return any(
        found.stage == stage and found.not_applicable is not None
        for found in each.whole.procedure.stages
    )


def wet_at(each: Sound, placed: PlacedStep) -> bool:
    """Return whether water or a bath was left on the parts when a step begins."""
    wet = False
    level_wets = each.route.kind in WETS_AS_LEVEL
    for earlier in each.whole.steps[: placed.number - 1]:
        if earlier.action in WETS or (earlier.is_level_step and level_wets):
            wet = True
        elif earlier.action == "dry":
            wet = False
    return wet


def at_step(
    each: Sound, placed: PlacedStep, message: str, hint: str = "", key: str = ""
) -> Finding:
    """Return a finding at a step or a field of it; a waiver at its procedure counts too."""
    place = placed.step.place
    also = (each.whole.procedure.place, place)
    return Finding(place.at(key) if key else place, message, hint, also)


def at_procedure(each: Sound, message: str, hint: str = "") -> Finding:
    """Return a finding about something that no step of a procedure does."""
    procedure = each.whole.procedure.place
    return Finding(procedure.at("stages"), message, hint, (procedure,))
