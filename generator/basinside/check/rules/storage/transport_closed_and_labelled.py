"""The rule transport-closed-and-labelled."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked, Sound
from basinside.check.rule import Finding, rule
from basinside.model.procedure import Step
from basinside.model.words import Action
from basinside.problem import Level

_KEEPS: Final[frozenset[Action]] = frozenset({"transport", "store", "unload", "pack"})
"""What is done with clean things in a box."""


@rule(level=Level.WARN)
def check_transport_closed_and_labelled(checked: Checked) -> Iterator[Finding]:
    """Things are carried in something with a lid, and what is soiled has a box of its own.

    Why: an open bowl drips on the floor and on whoever carries it, and a box that carried soiled
    things soils the next clean one. A step with `action: transport` names in what it is carried;
    that has `lid: yes`; and what carries soiled things carries or keeps nothing clean.
    Bad: `do: Carry it over.`; or one box for both ways.
    Good: `in: soiled-box` with `soiled-box: {name: soiled box, lid: yes}`, and another box for the
    way back.
    Source: ISO 17664-1, heading transportation; a study of 59 facilities in Congo, Benin and
    Madagascar (soiled and clean ways crossing).
    """
    clean = _carry_clean(checked)
    for each in checked.sound:
        for placed in each.whole.steps:
            step = placed.step
            if placed.action != "transport":
                continue
            box = checked.content.equipment.get(placed.in_ or "")
            if placed.in_ is None:
                yield _finding(
                    each, step, "something and does not say in what", "Name it under “in:”."
                )
            elif box is not None and not box.lid:
                said = f"things in {box.name}, of which nothing says that it has a lid"
                hint = "Write “lid: yes” at the equipment when it has one, or take one that has."
                yield _finding(each, step, said, hint)
            elif box is not None and placed.before == "soiled" and placed.in_ in clean:
                by = clean[placed.in_]
                said = f"soiled things in {box.name}, and {by} puts clean ones into it"
                yield _finding(each, step, said, "Take a box that is for soiled things alone.")


def _carry_clean(checked: Checked) -> dict[str, str]:
    """Return what clean things are carried or kept in, each with the first procedure that does."""
    found: dict[str, str] = {}
    for each in checked.sound:
        for placed in each.whole.steps:
            if placed.in_ and placed.before != "soiled" and placed.action in _KEEPS:
                found.setdefault(placed.in_, each.name)
    return found


def _finding(each: Sound, step: Step, said: str, hint: str) -> Finding:
    message = f"in {step.step} {each.name} carries {said}"
    return Finding(step.place, message, hint, (each.whole.procedure.place,))
