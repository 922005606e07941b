"""The rule sharps-out-first."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked, Sound
from basinside.check.course import at_step
from basinside.check.rule import Finding, rule
from basinside.model.derived import PlacedStep
from basinside.model.words import Action
from basinside.problem import Level

HANDLES: Final[frozenset[Action]] = frozenset(
    {"wet", "wipe", "soak", "transport", "take apart", "count", "clean", "rinse"}
)
"""What puts hands to the soiled parts, or hands them on to somebody else."""


@rule(level=Level.STOP)
def check_sharps_out_first(checked: Checked) -> Iterator[Finding]:
    """Needles and blades come out before anybody wipes, carries or washes the set.

    Why: who used the needle knows where it is; who washes the set finds it with a finger.
    It is asked of instruments with a part of `kinds: [cutting edge]`, and of procedures that warn
    of something sharp (`danger: {kind: sharp}`) while the parts are soiled. What counts is a step
    with `makes_sure: [sharps out]` before the first that handles them, or that step itself.
    Bad: wet the set, carry it, and look for needles before washing.
    Good: drop the needles into the sharps box where they were used; then wet the set.
    Source: common practice.
    """
    for each in checked.sound:
        if _has_sharps(each):
            yield from _handled_first(each)


def _has_sharps(each: Sound) -> bool:
    return any("cutting edge" in part.kinds for part in each.whole.parts) or any(
        placed.danger is not None and placed.danger.kind == "sharp"
        for placed in each.whole.steps
        if placed.before == "soiled"
    )


def _handled_first(each: Sound) -> Iterator[Finding]:
    first: PlacedStep | None = None
    for placed in each.whole.steps:
        if first is None and placed.action in HANDLES:
            first = placed
        if "sharps out" in placed.makes_sure:
            if first is not None and first is not placed:
                yield _finding(each, first, f"; {placed.step.step} comes too late")
            return
    if first is not None:
        yield _finding(each, first, "")


def _finding(each: Sound, first: PlacedStep, late: str) -> Finding:
    return at_step(
        each,
        first,
        f"{each.name} handles in {first.step.step} a set that may still hold needles or"
        f" blades{late}",
        "Put a step before it that takes them out, with “makes_sure: [sharps out]”.",
    )
