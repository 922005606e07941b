"""The rule carried-closed-to-cleaning."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked, Sound
from basinside.check.course import at_procedure, at_step, cleaned_at, not_applicable
from basinside.check.rule import Finding, rule
from basinside.check.task_steps import first_of
from basinside.model.derived import PlacedStep
from basinside.model.words import Action
from basinside.problem import Level

AT_THE_SINK: Final[frozenset[Action]] = frozenset({"take apart", "count", "soak", "clean"})


@rule(level=Level.WARN)
def check_carried_closed_to_cleaning(checked: Checked) -> Iterator[Finding]:
    """From where it was used to where it is cleaned everything is carried, moist, under a lid.

    Why: an open bowl drips blood along the corridor and dries out on the way, and whoever meets it
    is splashed.
    Where there is a stage `point of use`, a step with `action: transport` follows what keeps the
    parts moist and comes before they are taken apart, counted, soaked or cleaned; or the step that
    keeps them moist names a container with `lid: yes`. A procedure of some parts only may leave it
    to another of the same instrument. What is wiped where it stands is not asked.
    Bad: wet it, put on gloves, take it apart.
    Good: wet it, `action: transport` with `in: soiled-box`, take it apart.
    Source: ISO 17664-1, heading transportation; CDC, Guideline for disinfection and sterilization
    in healthcare facilities, 2008, on cleaning; common practice.
    """
    carried = {
        each.instrument.instrument
        for each in checked.sound
        if each.whole.procedure.parts and _carried(checked, each) is not None
    }
    for each in checked.sound:
        if each.route.kind == "wiping" or not_applicable(each, "point of use"):
            continue
        if not cleaned_at(each) or each.whole.steps[0].stage.stage != "point of use":
            continue
        carry = _carried(checked, each)
        at_sink = first_of(each.whole.steps, *AT_THE_SINK)
        if carry is None:
            if not each.whole.procedure.parts or each.instrument.instrument not in carried:
                yield at_procedure(
                    each,
                    f"{each.name} does not say in what the parts are carried to where they are"
                    " cleaned",
                    "Put a step with “action: transport” and “in:” a container with a lid after"
                    " the stage “point of use”.",
                )
        elif at_sink is not None and at_sink.number < carry.number:
            yield at_step(
                each,
                carry,
                f"{each.name} carries in {carry.step.step} what it has at the sink already in"
                f" {at_sink.step.step}",
                "Carry it first.",
            )
        else:
            yield from _moist_later(each, carry)


def _moist_later(each: Sound, carry: PlacedStep) -> Iterator[Finding]:
    later = each.whole.steps[carry.number : cleaned_at(each)]
    wet = next(
        (placed for placed in later if placed.action == "wet" and placed.number > carry.number),
        None,
    )
    if wet is not None:
        yield at_step(
            each,
            wet,
            f"{each.name} keeps the parts moist in {wet.step.step} only after they were carried in"
            f" {carry.step.step}",
            "Wet them where they were used, then carry them.",
        )


def _carried(checked: Checked, each: Sound) -> PlacedStep | None:
    """Return the step that carries the soiled parts, or closes them in where they are wetted."""
    for placed in each.whole.steps[: cleaned_at(each)]:
        if placed.action == "transport":
            return placed
        box = checked.content.equipment.get(placed.in_ or "")
        if placed.stage.stage == "point of use" and placed.action != "discard" and box and box.lid:
            return placed
    return None
