"""Which of all possible mistakes are tried: the same ones in every run."""

from __future__ import annotations

import random
from collections.abc import Mapping
from typing import Final

from tests.mutations.kinds import KINDS, Mutation

SEED: Final = 20261125
DRAWN: Final[Mapping[str, int]] = {
    "drop step": 100,
    "swap steps": 80,
    "change value": 100,
    "change unit": 40,
    "drop protection": 60,
    "copy item": 30,
    "break key": 50,
    "change tolerance": 40,
}
"""500 mistakes, more of those that hurt."""


def drawn(files: Mapping[str, str], how_many: Mapping[str, int]) -> list[Mutation]:
    """Return so many mistakes of each kind, drawn with one seed."""
    found: list[Mutation] = []
    for kind, count in how_many.items():
        possible = list(KINDS[kind](files))
        found.extend(random.Random(f"{SEED} {kind}").sample(possible, count))
    return found
