"""Where something is used: by which entry, as what, and where that stands."""

from __future__ import annotations

from typing import NamedTuple

from basinside.problem import Place


class Owner(NamedTuple):
    """An entry that uses something: of which kind, and which."""

    kind: str
    id: str


class Use(NamedTuple):
    """One use of an id.

    ``owners`` are the entries that have it: the one that writes it, then those that share it as
    variants. ``role`` are the keys and indices that lead to it inside the entry. ``prose`` tells
    whether it stands in a sentence.
    """

    owners: tuple[Owner, ...]
    role: tuple[str | int, ...]
    place: Place
    prose: bool


class Meant(NamedTuple):
    """What an id names: of which kind, which, and where it is written; no place for a rule."""

    kind: str
    id: str
    place: Place | None
