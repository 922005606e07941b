"""The rule processed-container."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked, Sound
from basinside.check.course import after_level, at_step, bare_after_level, with_level
from basinside.check.rule import Finding, rule
from basinside.model.words import Action
from basinside.problem import Level

LIES_IN: Final[frozenset[Action]] = frozenset(
    {"rinse", "unload", "cool", "dry", "hold", "store", "transport"}
)
"""Actions in whose container the parts lie."""
IN_HEAT: Final[frozenset[Action]] = frozenset({"load", "expose", "hold"})
HEAT: Final = frozenset({"boiling", "steam", "dry heat"})


@rule(level=Level.STOP)
def check_processed_container(checked: Checked) -> Iterator[Finding]:
    """What has its level lies in a processed container, and is stored in one.

    Why: a clean bowl is not a processed one. Parts that are lifted out of the bath into it take on
    what was in it, and what is stored open takes on dust.
    A container is the `in` of a step. It is `processed: yes` among the equipment, or it went
    through the same boiling, steam or oven with the parts. The step that stores them names one.
    Parts that lie in a pack have theirs.
    Bad: lift out into the wash basin; store without saying in what.
    Good: `in: boiled-tray` from the rinse to the shelf.
    Source: IARC, Reference manual for screening, 2005, appendix C (dried and kept in
    a covered container that was disinfected highly).
    """
    for each in checked.sound:
        if each.level_steps and bare_after_level(each):
            yield from _unprocessed(checked, each)


def _unprocessed(checked: Checked, each: Sound) -> Iterator[Finding]:
    with_the_load = {
        placed.in_
        for placed in each.whole.steps[: each.level_steps[-1].number]
        if each.route.kind in HEAT and placed.before != "soiled" and placed.action in IN_HEAT
    }
    told: set[str] = set()
    for placed in after_level(each):
        step, name = placed.step, placed.in_
        if placed.action not in LIES_IN:
            continue
        if name is None:
            if placed.action == "store":
                yield at_step(
                    each,
                    placed,
                    f"{each.name} does not say in {step.step} in what the parts are kept",
                    "Name a processed container in “in:”.",
                )
            continue
        found = checked.content.equipment.get(name)
        if found is None or found.processed or name in with_the_load or name in told:
            continue
        told.add(name)
        yield at_step(
            each,
            placed,
            f"{each.name} lays in {step.step} what {with_level(each)} into a container that"
            f" is not processed: {found.name}",
            "Name a processed container, or write “processed: yes” at the equipment.",
            "in",
        )
