"""Instruments written as differences from a sibling, made whole before they are typed.

Maps merge key by key, ``parts`` by part id, other lists are replaced whole; ``without`` removes
parts. Each key keeps the place it was written at.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

from basinside.load.entries import read_entry
from basinside.model.instrument import Instrument
from basinside.problem import Level, Place, Problem

LONGEST_CHAIN: Final = 20
"""Variants of variants; two are usual (our own cap)."""

_OWN_KEYS = frozenset({"instrument", "variant_of", "look_alikes", "units", "waive"})


def merge_variants(
    written: Mapping[str, dict[str, Any]],
) -> tuple[dict[str, Instrument], list[Problem]]:
    """Return the whole instruments by file, and the problems of each.

    Args:
        written: file -> plain data of one instrument, places included.
    """
    named = ((data.get("instrument"), file) for file, data in written.items())
    by_id: dict[Any, str] = {name: file for name, file in named if isinstance(name, str)}
    problems: list[Problem] = []
    out: dict[str, Instrument] = {}
    for file, data in written.items():
        whole = _whole(data, file, written, by_id, problems, ())
        if whole is not None:
            entry, found = read_entry(Instrument, whole, file)
            problems.extend(found)
            if entry is not None:
                out[file] = entry
    return out, list(dict.fromkeys(problems))


def _whole(
    data: dict[str, Any],
    file: str,
    written: Mapping[str, dict[str, Any]],
    by_id: Mapping[Any, str],
    problems: list[Problem],
    above: tuple[str, ...],
) -> dict[str, Any] | None:
    parent_id = data.get("variant_of")
    if parent_id is None:
        return data
    parent_file = by_id.get(parent_id) if isinstance(parent_id, str) else None
    if parent_file is None:
        message = f"there is no instrument “{parent_id}” to be a variant of"
        problems.append(_problem(Place(file, ("variant_of",)), message))
        return None
    if len(above) >= LONGEST_CHAIN:
        message = f"more than {LONGEST_CHAIN} variants of one another; write this one whole"
        problems.append(_problem(Place(file, ("variant_of",)), message))
        return None
    if parent_file in (*above, file):
        problems.append(_problem(Place(file, ("variant_of",)), "variants lead round in a circle"))
        return None
    parent = _whole(written[parent_file], parent_file, written, by_id, problems, (*above, file))
    if parent is None:
        return None
    own = {key: value for key, value in data.items() if key != "without"}
    base = {key: value for key, value in parent.items() if key not in _OWN_KEYS}
    merged: dict[str, Any] = _merge(base, own)
    gone = data.get("without", ())
    parts = merged.get("parts")
    if isinstance(parts, tuple) and isinstance(gone, tuple):
        known = {_part_id(each) for each in parts}
        for n, each in enumerate(gone):
            if each is not None and each not in known:
                message = f"there is no part “{each}” to leave out"
                problems.append(_problem(Place(file, ("without", n)), message))
        merged["parts"] = tuple(each for each in parts if _part_id(each) not in gone)
    return merged


def _merge(base: dict[str, Any], own: dict[str, Any]) -> dict[str, Any]:
    out = dict(base)
    for key, value in own.items():
        before = out.get(key)
        if isinstance(before, dict) and isinstance(value, dict):
            out[key] = _merge(before, value)
        elif key == "parts" and isinstance(before, tuple) and isinstance(value, tuple):
            out[key] = _merge_parts(before, value)
        else:
            out[key] = value
    return out


def _merge_parts(base: tuple[Any, ...], own: tuple[Any, ...]) -> tuple[Any, ...]:
    changes = {_part_id(each): each for each in own}
    merged = [
        _merge(each, changes[_part_id(each)])
        if isinstance(each, dict) and isinstance(changes.get(_part_id(each)), dict)
        else each
        for each in base
    ]
    known = {_part_id(each) for each in base}
    return (*merged, *(each for each in own if _part_id(each) not in known))


def _part_id(part: Any) -> str:
    found = part.get("part") if isinstance(part, dict) else None
    return found if isinstance(found, str) else ""


def _problem(place: Place, message: str) -> Problem:
    return Problem(place=place, rule="unknown-id", level=Level.NEVER, message=message)
