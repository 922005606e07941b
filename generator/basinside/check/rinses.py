"""What stays on the parts until a rinse takes it off."""

from __future__ import annotations

from typing import Final

from basinside.check.checked import Sound
from basinside.check.rule import Finding
from basinside.model.derived import PlacedStep
from basinside.model.words import Action, Family

NEED_NO_RINSE: Final[frozenset[Family]] = frozenset({"water", "alcohol", "lubricant"})
"""Water leaves nothing, alcohol flies off, a lubricant is meant to stay (common practice)."""
TOUCHES_PARTS: Final[frozenset[Action]] = frozenset(
    {"wet", "wipe", "soak", "clean", "load", "expose", "hold"}
)


def stays_on(placed: PlacedStep) -> bool:
    """Return whether a step puts a chemical on the parts that does not go off by itself."""
    agent = placed.agent
    return (
        agent is not None and agent.family not in NEED_NO_RINSE and placed.action in TOUCHES_PARTS
    )


def rinses(placed: PlacedStep) -> bool:
    """Return whether a step rinses with water."""
    return placed.action == "rinse" and (placed.agent is None or placed.agent.family == "water")


def unrinsed(each: Sound, left: PlacedStep, when: str) -> Finding:
    """Return the finding for a chemical that is still on the parts."""
    name = left.agent.name if left.agent else each.route.name
    return Finding(
        left.step.place,
        f"{each.name} does not rinse off what {left.step.step} puts on ({name}) {when}",
        "Put a step with “action: rinse” and its water after it.",
        (each.whole.procedure.place,),
    )
