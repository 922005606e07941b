"""The rule immersion-stated."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked, Sound
from basinside.check.course import at_step
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.check.under import Under, goes_into, goes_under
from basinside.model.words import Action
from basinside.problem import Level

INTO_LEVEL: Final[frozenset[Action]] = frozenset({"load", "expose"})


@rule(level=Level.STOP)
def check_immersion_stated(checked: Checked) -> Iterator[Finding]:
    """How each part goes under is stated, and a step sees to it.

    Why: what sticks out of the water is not disinfected, and a pump, a lamp or a gauge that goes
    under is ruined without a sign. Thin plastic may float on boiling water and still get hot
    through; other parts may not.
    `immersion: {boiling: .., chemical: ..}` stands at the instrument, or at a part that differs.
    Unless all of it may float, a step that loads or exposes has `makes_sure: [all under]`. A part
    whose bath is `never` is not soaked either.
    Bad: boil an instrument that does not say how; soak the handle with the blade.
    Good: `immersion: {boiling: all under}` and `makes_sure: [all under]` where the pot is filled.
    Source: IARC, Reference manual for screening, 2005, p.130 (all under water; floating plastic
    got hot inside).
    """
    for each in checked.sound:
        kind = goes_into(each.route)
        if kind is not None:
            yield from _in_level(each, kind)
        yield from _soaked(each)


def _in_level(each: Sound, kind: Under) -> Iterator[Finding]:
    how = [(part, goes_under(each.instrument, part, kind)) for part in each.whole.parts]
    word = "in boiling water" if kind == "boiling" else "in a bath"
    unstated = [part.shown_name for part, found in how if found is None]
    never = [part.shown_name for part, found in how if found == "never"]
    instrument = each.instrument.place
    if unstated:
        yield Finding(
            instrument.at("immersion"),
            f"{each.instrument.instrument} does not say how it goes under {word}:"
            f" {listed(unstated)}",
            f"Write “{kind}:” in its “immersion:”, with floating allowed, all under, all under and"
            " filled, or never.",
            (instrument, each.whole.procedure.place),
        )
    if never:
        yield Finding(
            each.whole.procedure.place.at("route"),
            f"{each.name} puts {word} what must never go under: {listed(never)}",
            "Choose another route, or leave it out of “parts:”.",
            (each.whole.procedure.place, instrument),
        )
    if unstated or never or not each.level_steps:
        return
    sure = any(
        "all under" in placed.makes_sure
        for placed in each.whole.steps
        if placed.action in INTO_LEVEL
    )
    if not sure and any(found != "floating allowed" for _, found in how):
        first = each.level_steps[0]
        yield at_step(
            each,
            first,
            f"{each.name} exposes in {first.step.step} what may stick out of the"
            f" {'water' if kind == 'boiling' else 'bath'}",
            "Say that all of it is under, and write “makes_sure: [all under]”.",
        )


def _soaked(each: Sound) -> Iterator[Finding]:
    for placed in each.whole.steps:
        if placed.action != "soak":
            continue
        dipped = [
            part.shown_name
            for part in each.whole.parts
            if (not placed.step.parts or part.part in placed.step.parts)
            and goes_under(each.instrument, part, "chemical") == "never"
        ]
        if dipped:
            yield at_step(
                each,
                placed,
                f"{each.name} soaks in {placed.step.step} what must never go under:"
                f" {listed(dipped)}",
                "Wipe it, or name in “parts:” what is soaked.",
            )
