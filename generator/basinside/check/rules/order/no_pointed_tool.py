"""The rule no-pointed-tool."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.course import at_step
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.model.equipment import Equipment
from basinside.model.instrument import Part
from basinside.model.words import Material, PartKind
from basinside.problem import Level

SOFT_KINDS: Final[frozenset[PartKind]] = frozenset({"seal", "valve", "relief valve", "bag"})
SOFT: Final[frozenset[Material]] = frozenset({"silicone", "rubber", "vinyl"})


@rule(level=Level.STOP)
def check_no_pointed_tool(checked: Checked) -> Iterator[Finding]:
    """Nothing pointed touches a seal, a valve or a soft part, and no tool that a part forbids.

    Why: a pin that lifts a seal nicks it. The nick cannot be seen, and the vacuum is gone or the
    valve leaks when a patient needs it.
    Soft is a part of `kinds: [seal]`, `valve`, `relief valve` or `bag`, or one that is
    `made_of: silicone`, `rubber` or `vinyl`. A tool is `pointed: yes` among the equipment. A tool
    whose name stands among a part's `tools: {never: [..]}` is no tool for it either. A step that
    names its `parts` is asked about those only.
    Bad: `with: [pointed-forceps]` where a seal is taken off.
    Good: fingers, or `with: [boiled-forceps]`, which are blunt.
    Source: common practice; the maker's instructions, cited at the part.
    """
    equipment = checked.content.equipment
    pointed = {name for name, tool in equipment.items() if tool.pointed}
    for each in checked.sound:
        parts = each.whole.parts
        never = {word for part in parts if part.tools for word in part.tools.never}
        asked = pointed
        if never:
            called = ((name, _called(name, tool)) for name, tool in equipment.items())
            asked = pointed | {name for name, words in called if not never.isdisjoint(words)}
        for placed in each.whole.steps if asked else ():
            for tool in asked.intersection((*placed.with_, *placed.step.needs)):
                met = [part for part in parts if part.part in placed.step.parts] or list(parts)
                hurt = [part.shown_name for part in met if _hurts(tool, equipment[tool], part)]
                if hurt:
                    yield at_step(
                        each,
                        placed,
                        f"{each.name} uses in {placed.step.step} what can damage {listed(hurt)}:"
                        f" {equipment[tool].name}",
                        "Name a blunt tool, or in “parts:” what it is for.",
                    )


def _hurts(name: str, tool: Equipment, part: Part) -> bool:
    soft = part.made_of in SOFT or not SOFT_KINDS.isdisjoint(part.kinds)
    if tool.pointed and soft:
        return True
    return part.tools is not None and any(word in part.tools.never for word in _called(name, tool))


def _called(name: str, tool: Equipment) -> tuple[str, str]:
    return tool.name, name.replace("-", " ")
