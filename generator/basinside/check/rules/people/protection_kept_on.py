"""The rule protection-kept-on."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.check.task_steps import at_its_step
from basinside.model.derived import PlacedStep, WholeProcedure
from basinside.model.words import Action, Worn
from basinside.problem import Level

INSTEAD: Final[dict[Worn, frozenset[Worn]]] = {
    "heavy gloves": frozenset({"heavy gloves", "waterproof heat gloves"}),
    "thin gloves": frozenset({"thin gloves", "heavy gloves", "waterproof heat gloves"}),
    "eye protection": frozenset({"eye protection", "face shield"}),
    "apron": frozenset({"apron"}),
}
"""What stays on, and what may take its place."""
ENDS: Final[frozenset[Action]] = frozenset({"wash hands", "take off", "put on"})
HOT: Final[frozenset[Action]] = frozenset({"unload"})
"""With it the work ends for which eyes and apron alone were put on."""
AT_THE_DESK: Final[frozenset[Action]] = frozenset({"release", "record"})
"""Pens and cards are never touched with gloves on; what else is worn may stay on for it."""


@rule(level=Level.STOP)
def check_protection_kept_on(checked: Checked) -> Iterator[Finding]:
    """What was put on stays on until it is taken off.

    Why: a step between two others that names no gloves reads as if they came off for it; whoever
    takes them off touches soiled hands with clean ones, and the apron is wet by then.
    Gloves, eye protection and apron of a step with `action: put on` are named in each step after
    it, by itself or by the card of its chemical, until `wash hands`, `take off` or another
    `put on`. Heat gloves take the place of others, a face shield covers the eyes. Without gloves
    (at a vessel) it ends when the load is out. Papers are written with bare hands: no
    `action: record` comes while heavy gloves are on.
    Bad: put on heavy gloves, take apart in them, count with `wear: []`.
    Good: `wear: [heavy gloves, eye protection, apron]` at each step until the hands are washed.
    Source: common practice.
    """
    for whole in checked.derived.procedures.values():
        yield from _taken_off(whole)


def _taken_off(whole: WholeProcedure) -> Iterator[Finding]:
    on: PlacedStep | None = None
    for placed in whole.steps:
        action = placed.action
        if action == "record" and on is not None and "heavy gloves" in on.wear:
            yield at_its_step(
                whole,
                placed,
                f"{whole.procedure.procedure} writes in {placed.step.step} with the gloves of"
                f" {on.step.step} on",
                "Put a step with “action: wash hands” before it.",
            )
        if action in ENDS:
            on = placed if action == "put on" else None
        elif on is None:
            continue
        elif action in AT_THE_DESK:
            on = None if _has_gloves(on) else on
        else:
            missing = [] if on.wear == placed.wear else _missing(on, placed)
            if missing:
                yield _lacking(whole, on, placed, missing)
            if action in HOT and not _has_gloves(on):
                on = None


def _has_gloves(on: PlacedStep) -> bool:
    return any(each.endswith("gloves") for each in on.wear)


def _missing(on: PlacedStep, placed: PlacedStep) -> list[Worn]:
    return [each for each in on.wear if each in INSTEAD and INSTEAD[each].isdisjoint(placed.wear)]


def _lacking(
    whole: WholeProcedure, on: PlacedStep, placed: PlacedStep, missing: list[Worn]
) -> Finding:
    return at_its_step(
        whole,
        placed,
        f"{whole.procedure.procedure} puts on {listed(missing)} in {on.step.step}, and"
        f" {placed.step.step} no longer asks for it",
        "Write it under “wear:”, or put a step with “action: take off” before it.",
    )
