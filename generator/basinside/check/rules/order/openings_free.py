"""The rule openings-free."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked, Sound
from basinside.check.course import at_step, pack_for_level
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.check.under import goes_into, goes_under
from basinside.model.derived import PlacedStep
from basinside.model.instrument import Part
from basinside.model.words import Action, MakesSure
from basinside.problem import Level

INTO_LEVEL: Final[frozenset[Action]] = frozenset({"pack", "load", "expose"})
AIR_STAYS: Final = frozenset({"steam", "dry heat"})


@rule(level=Level.STOP)
def check_openings_free(checked: Checked) -> Iterator[Finding]:
    """What opens is open, what is hollow is filled, and nothing lies on another in the pack.

    Why: brush, bath and steam reach only the faces that lie free. Tissue was found
    in hollow instruments after seven joints were infected; under a shut hinge it stays too.
    A part of `kinds: [hinge]` is open when it is cleaned and when it gets its level; a hollow part
    (`lumen: yes`) is open in steam. Say it with `makes_sure: [all open]` at a step of each. A
    hollow part that goes under `all under and filled` asks for `makes_sure: [no bubbles]` where
    it is loaded, and a pack of several pieces for `makes_sure: [nothing touching]`.
    Bad: clean closed scissors; sink a tube that is full of air.
    Good: take apart with `makes_sure: [all open]`, load with `makes_sure: [all under, no bubbles]`.
    Source: CDC, Guideline for disinfection and sterilization in healthcare facilities, 2008, on
    cleaning (open hinges, no stacking); Tosh et al., Infection Control and Hospital Epidemiology,
    2011 (tissue in cannula and shaver).
    """
    for each in checked.sound:
        if each.level_steps:
            yield from _shut(each)
            yield from _filled(each)
            yield from _touching(each)


def _shut(each: Sound) -> Iterator[Finding]:
    hinged = [part for part in each.whole.parts if "hinge" in part.kinds]
    clean = next((one for one in each.whole.steps if one.action == "clean"), None)
    soiled = [one for one in each.whole.steps if one.before == "soiled"]
    if hinged and clean is not None and not _said("all open", soiled):
        yield _closed(each, clean, hinged, "cleans")
    hollow = [part for part in each.whole.parts if part.lumen]
    shut = [*hinged, *(hollow if each.route.kind in AIR_STAYS else ())]
    if shut and each.route.kind != "wiping" and not _said("all open", _into_level(each)):
        pack = pack_for_level(each)
        where = each.level_steps[0] if pack is None else pack
        yield _closed(each, where, shut, "exposes" if pack is None else "packs")


def _closed(each: Sound, where: PlacedStep, parts: list[Part], verb: str) -> Finding:
    names = listed(part.shown_name for part in parts)
    return at_step(
        each,
        where,
        f"{each.name} {verb} in {where.step.step} what may be shut: {names}",
        "Say in the step that all of it is open, and write “makes_sure: [all open]”.",
    )


def _filled(each: Sound) -> Iterator[Finding]:
    kind = goes_into(each.route)
    if kind is None:
        return
    hollow = [
        part.shown_name
        for part in each.whole.parts
        if part.lumen and goes_under(each.instrument, part, kind) == "all under and filled"
    ]
    if hollow and not _said("no bubbles", _into_level(each)):
        first = each.level_steps[0]
        yield at_step(
            each,
            first,
            f"{each.name} exposes in {first.step.step} hollow parts that may hold air:"
            f" {listed(hollow)}",
            "Say how they are filled, and write “makes_sure: [no bubbles]” there.",
        )


def _touching(each: Sound) -> Iterator[Finding]:
    pack = pack_for_level(each)
    several = sum(part.count for part in each.whole.parts) > 1
    if pack is not None and several and "nothing touching" not in pack.step.makes_sure:
        yield at_step(
            each,
            pack,
            f"{each.name} packs in {pack.step.step} pieces that may lie on one another",
            "Say that they lie apart, and write “makes_sure: [nothing touching]”.",
        )


def _into_level(each: Sound) -> list[PlacedStep]:
    return [one for one in each.whole.steps if one.action in INTO_LEVEL]


def _said(word: MakesSure, steps: list[PlacedStep]) -> bool:
    return any(word in placed.makes_sure for placed in steps)
