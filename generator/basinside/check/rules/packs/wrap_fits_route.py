"""The rule wrap-fits-route."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked, Sound
from basinside.check.rule import Finding, rule
from basinside.model.equipment import Equipment
from basinside.problem import Level, Place

_HEATED: Final = frozenset({"vessel", "heat"})
"""Kinds of equipment that hold the load and the steam: no wrap."""


@rule(level=Level.STOP)
def check_wrap_fits_route(checked: Checked) -> Iterator[Finding]:
    """What is wrapped is wrapped in something that its route passes through.

    Why: steam passes through cloth and paper and not through a closed tin, and dry heat burns
    both. What a wrap is for stands at its equipment entry, `wraps_for`.
    Asked of steam and of dry heat: of wraps that packing steps or the route name, and of boxes
    with a lid that go into the vessel.
    Bad: `wrap: {name: plastic bag, kind: wrapping}` for steam.
    Good: `wrap: {name: two layers of cotton, kind: wrapping, wraps_for: [steam]}`.
    Source: CDC, Guideline for disinfection and sterilization in healthcare facilities, 2008
    (packaging that lets the sterilant through).
    """
    equipment = checked.content.equipment
    for each in checked.sound:
        if each.route.kind not in {"steam", "dry heat"}:
            continue
        for placed in each.whole.steps:
            step = placed.step
            names = {*step.needs, *placed.with_, *([placed.in_] if placed.in_ else [])}
            goes_in = placed.action in {"load", "expose"}
            for name in sorted(names):
                used = equipment.get(name)
                if used is None or each.route.kind in used.wraps_for:
                    continue
                if (used.kind == "wrapping" and placed.action == "pack") or (
                    goes_in and used.lid and name == placed.in_ and used.kind not in _HEATED
                ):
                    yield _does_not_pass(each, used, name, step.place)
        yield from _of_route(checked, each)


def _of_route(checked: Checked, each: Sound) -> Iterator[Finding]:
    """Yield findings for the route's wraps where no step names one, and where nothing names any."""
    if not each.route.wrapped:
        return
    packs = [placed.step for placed in each.whole.steps if placed.action == "pack"]
    wraps = {
        name
        for step in packs
        for name in (*step.needs, *step.with_, *([step.in_] if step.in_ else ()))
        if _is_wrap(checked, name)
    }
    for name in each.route.needs:
        if not wraps and _is_wrap(checked, name):
            used = checked.content.equipment[name]
            if each.route.kind not in used.wraps_for:
                yield _does_not_pass(each, used, name, each.whole.procedure.place.at("route"))
    if packs and not wraps and not any(_is_wrap(checked, name) for name in each.route.needs):
        yield Finding(
            packs[0].place,
            f"{each.name} wraps in {packs[0].step} and names no wrap",
            "Name equipment of the kind “wrapping” under “needs:”.",
            (each.whole.procedure.place, each.route.place),
        )


def _is_wrap(checked: Checked, name: str) -> bool:
    used = checked.content.equipment.get(name)
    return used is not None and used.kind == "wrapping"


def _does_not_pass(each: Sound, used: Equipment, name: str, place: Place) -> Finding:
    said = "does not say what passes through it"
    if used.wraps_for:
        said = f"is for {' and '.join(used.wraps_for)}"
    return Finding(
        place,
        f"{each.name} goes through {each.route.kind} in {used.name} ({name}), which {said}",
        f"Write “wraps_for: [{each.route.kind}]” at the equipment when it is so, or take another.",
        (each.whole.procedure.place, used.place, each.route.place),
    )
