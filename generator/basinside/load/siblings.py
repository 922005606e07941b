"""Entries written as differences from a sibling, made whole before they are typed.

Which sibling, how far a chain of them may go, and what is wrong with it; what the difference
means for one kind of entry is its own (`variants`, `procedure_variants`).
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, Final, Generic, NamedTuple, TypeVar

from pydantic import BaseModel

from basinside.load.entries import read_entry
from basinside.problem import Level, Place, Problem

LONGEST_CHAIN: Final = 20
"""Variants of variants; two are usual (our own cap)."""

M = TypeVar("M", bound=BaseModel)
Data = dict[str, Any]


class Siblings(NamedTuple, Generic[M]):
    """A kind of entry that may be written as a difference.

    ``whole`` takes the sibling, the entry's own keys, its file and the list for problems.
    """

    word: str
    id_key: str
    model: type[M]
    whole: Callable[[Data, Data, str, list[Problem]], Data]


def make_whole(
    written: Mapping[str, Data], kind: Siblings[M], wanted: frozenset[str] | None = None
) -> tuple[dict[str, M], list[Problem]]:
    """Return the whole entries by file, and the problems of each.

    Args:
        written: file -> plain data of one entry, places included.
        kind: what they are.
        wanted: the files that are asked for; all when absent.
    """
    named = ((data.get(kind.id_key), file) for file, data in written.items())
    by_id = {name: file for name, file in named if isinstance(name, str)}
    problems: list[Problem] = []
    out: dict[str, M] = {}
    for file, data in written.items():
        if wanted is not None and file not in wanted:
            continue
        whole = _whole(data, file, written, by_id, kind, problems, ())
        if whole is not None:
            entry, found = read_entry(kind.model, whole, file)
            problems.extend(found)
            if entry is not None:
                out[file] = entry
    return out, list(dict.fromkeys(problems))


def _whole(
    data: Data,
    file: str,
    written: Mapping[str, Data],
    by_id: Mapping[str, str],
    kind: Siblings[M],
    problems: list[Problem],
    above: tuple[str, ...],
) -> Data | None:
    parent_id = data.get("variant_of")
    if parent_id is None:
        return data
    parent_file = by_id.get(parent_id) if isinstance(parent_id, str) else None
    place = Place(file, ("variant_of",))
    if parent_file is None:
        message = f"there is no {kind.word} “{parent_id}” to be a variant of"
        problems.append(no_such(place, message))
        return None
    if len(above) >= LONGEST_CHAIN:
        message = f"more than {LONGEST_CHAIN} variants of one another; write this one whole"
        problems.append(no_such(place, message))
        return None
    if parent_file in (*above, file):
        problems.append(no_such(place, "variants lead round in a circle"))
        return None
    own_line = (*above, file)
    parent = _whole(written[parent_file], parent_file, written, by_id, kind, problems, own_line)
    return None if parent is None else kind.whole(parent, data, file, problems)


def merge_keys(base: Data, own: Data) -> Data:
    """Return the sibling's keys with the entry's own over them; mappings merge key by key."""
    out = dict(base)
    for key, value in own.items():
        before = out.get(key)
        nested = isinstance(before, dict) and isinstance(value, dict)
        out[key] = merge_keys(before, value) if nested else value  # type: ignore[arg-type]
    return out


def no_such(place: Place, message: str, hint: str = "") -> Problem:
    """Return the problem of an id that names nothing here."""
    return Problem(place=place, rule="unknown-id", level=Level.NEVER, message=message, hint=hint)
