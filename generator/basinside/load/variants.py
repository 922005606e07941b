"""Instruments written as differences from a sibling.

Maps merge key by key, ``parts`` by part id, other lists are replaced whole; ``without`` removes
parts. Each key keeps the place it was written at.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from basinside.load.siblings import Data, Siblings, make_whole, merge_keys, no_such
from basinside.model.instrument import Instrument
from basinside.problem import Place, Problem

_OWN_KEYS = frozenset({"instrument", "variant_of", "look_alikes", "units", "waive"})


def merge_variants(written: Mapping[str, Data]) -> tuple[dict[str, Instrument], list[Problem]]:
    """Return the whole instruments by file, and the problems of each.

    Args:
        written: file -> plain data of one instrument, places included.
    """
    return make_whole(written, Siblings("instrument", "instrument", Instrument, _whole))


def _whole(parent: Data, data: Data, file: str, problems: list[Problem]) -> Data:
    own = {key: value for key, value in data.items() if key not in {"without", "parts"}}
    base = {key: value for key, value in parent.items() if key not in _OWN_KEYS}
    merged = merge_keys(base, own)
    before, changed = base.get("parts"), data.get("parts")
    if isinstance(before, tuple) and isinstance(changed, tuple):
        merged["parts"] = _merge_parts(before, changed)
    elif "parts" in data:
        merged["parts"] = changed
    gone = data.get("without", ())
    parts = merged.get("parts")
    if isinstance(parts, tuple) and isinstance(gone, tuple):
        known = {_part_id(each) for each in parts}
        for n, each in enumerate(gone):
            if each is not None and each not in known:
                message = f"there is no part “{each}” to leave out"
                problems.append(no_such(Place(file, ("without", n)), message))
        merged["parts"] = tuple(each for each in parts if _part_id(each) not in gone)
    return merged


def _merge_parts(base: tuple[Any, ...], own: tuple[Any, ...]) -> tuple[Any, ...]:
    changes = {_part_id(each): each for each in own}
    merged = [
        merge_keys(each, changes[_part_id(each)])
        if isinstance(each, dict) and isinstance(changes.get(_part_id(each)), dict)
        else each
        for each in base
    ]
    known = {_part_id(each) for each in base}
    return (*merged, *(each for each in own if _part_id(each) not in known))


def _part_id(part: Any) -> str:
    found = part.get("part") if isinstance(part, dict) else None
    return found if isinstance(found, str) else ""
