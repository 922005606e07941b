"""What labels and records hold, and what they lack."""

from __future__ import annotations

from collections.abc import Collection, Iterable

from basinside.model.words import Writes


def not_written(needed: Iterable[Writes], written: Collection[Writes]) -> tuple[Writes, ...]:
    """Return what is needed and not written; a unit's own mark says which item it is."""
    have = {*written, "item"} if "unit mark" in written else set(written)
    return tuple(word for word in needed if word not in have)
