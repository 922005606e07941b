"""Which steps keep moist what was used, until it is cleaned."""

from __future__ import annotations

from typing import Final

from basinside.check.checked import Sound
from basinside.model.derived import PlacedStep
from basinside.model.words import Action

MOISTENS: Final[frozenset[Action]] = frozenset({"wet", "soak", "wipe", "rinse"})


def keeps_moist(each: Sound) -> tuple[PlacedStep, ...]:
    """Return the steps at the point of use that leave the parts moist."""
    return tuple(
        placed
        for placed in each.whole.steps
        if placed.stage.stage == "point of use" and placed.action in MOISTENS
    )
