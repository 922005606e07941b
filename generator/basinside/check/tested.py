"""Which parts can fail without looking different, so that only a test shows it."""

from __future__ import annotations

from typing import Final

from basinside.model.instrument import Part
from basinside.model.words import PartKind

TESTED_KINDS: Final[frozenset[PartKind]] = frozenset(
    {"valve", "relief valve", "seal", "light", "cutting edge", "gauge", "bag"}
)


def fails_unseen(part: Part) -> tuple[PartKind, ...]:
    """Return for which of its kinds a part has to be tested."""
    return tuple(kind for kind in part.kinds if kind in TESTED_KINDS)
