"""Whether each item is written with the block of its kind, and what must agree inside the block."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.model.item_kinds import Matter, Pair, right_sides
from basinside.model.quiz import Item, QuestionFile, Scenario
from basinside.model.words import FORM_KINDS, ItemKind
from basinside.problem import Level, Place, Problem

MOST_POSITIONS: Final = 100
"""Positions that an answer can name (``model.attempt.Position``)."""
LEAST_ENTRIES: Final = 3
"""With two entries an order is a guess between two (our own floor)."""

_BLOCK: Final[dict[ItemKind, str]] = {
    "choice": "options",
    "multiple": "options",
    "order": "entries",
    "numeric": "number",
    "match": "pairs",
}
_BESIDE: Final[dict[str, frozenset[str]]] = {
    "options": frozenset(),
    "entries": frozenset({"matters", "because", "shows"}),
    "number": frozenset(),
    "pairs": frozenset({"extra"}),
}


def item_blocks(file: QuestionFile) -> Iterator[Problem]:
    """Yield what does not agree inside the items of a file."""
    for entry in file.items:
        for item in entry.items if isinstance(entry, Scenario) else (entry,):
            yield from _own_block(item)
            yield from _inside(item)
            if file.pool == "assessment" and item.kind not in FORM_KINDS:
                said = f"a sealed form cannot hold an item of kind “{item.kind}” yet"
                hint = "Move it to a file of “pool: practice”, or ask it as a choice."
                yield _problem(item.place.at("kind"), "bad-value", said, hint)


def _own_block(item: Item) -> Iterator[Problem]:
    block = _BLOCK[item.kind]
    if not getattr(item, block):
        said = f"“{block}” is missing here; an item of kind “{item.kind}” is answered with it"
        yield _problem(item.place, "missing-key", said)
    for other, beside in _BESIDE.items():
        for key in (other, *sorted(beside)):
            if other != block and getattr(item, key):
                said = f"an item of kind “{item.kind}” has no “{key}”; it has “{block}”"
                hint = f"“{key}” is for kind {_kinds_with(other)}."
                yield _problem(item.place.at(key), "unknown-key", said, hint)


def _kinds_with(block: str) -> str:
    return " or ".join(f"“{kind}”" for kind, own in _BLOCK.items() if own == block)


def _inside(item: Item) -> Iterator[Problem]:
    if item.kind == "order" and item.entries:
        yield from _order(item)
    if item.number is not None and item.number.accept is not None:
        accept = item.number.accept
        if accept.from_ is None and accept.to is None:
            yield _problem(accept.place, "missing-key", "write “from”, “to” or both here")
    if item.kind == "match" and item.pairs:
        rights = right_sides(item.pairs, item.extra)
        for pair in item.pairs:
            yield from _mistakes(pair, rights)
        positions = len(item.pairs) * len(rights)
        if positions > MOST_POSITIONS:
            said = f"{positions} ways to pair left with right; at most {MOST_POSITIONS} fit"
            yield _problem(item.place.at("pairs"), "bad-value", said, "Make two items of it.")


def _mistakes(pair: Pair, rights: tuple[str, ...]) -> Iterator[Problem]:
    for mistake in pair.mistakes:
        place = mistake.place.at("right")
        if mistake.right == pair.right:
            yield _problem(place, "bad-value", f"“{mistake.right}” is what belongs to it")
        elif mistake.right not in rights:
            said = f"nobody can choose “{mistake.right}” here"
            hint = "Write it as it stands in another pair, or among “extra”."
            yield _problem(place, "unknown-id", said, hint)


def _order(item: Item) -> Iterator[Problem]:
    at: dict[str, int] = {}
    for n, entry in enumerate(item.entries):
        if entry.entry in at:
            said = f"there are two entries “{entry.entry}” here; give one an id of its own"
            yield _problem(entry.place.at("entry"), "repeated-id", said)
        at.setdefault(entry.entry, n)
    if len(item.entries) < LEAST_ENTRIES:
        said = f"an order needs at least {LEAST_ENTRIES} entries"
        yield _problem(item.place.at("entries"), "bad-value", said)
    if item.because is None:
        said = "“because” is missing here: why this order and no other"
        yield _problem(item.place, "missing-key", said)
    for matter in item.matters:
        yield from _matter(matter, at)


def _matter(matter: Matter, at: dict[str, int]) -> Iterator[Problem]:
    unknown = [key for key in ("first", "then") if getattr(matter, key) not in at]
    for key in unknown:
        said = f"there is no entry “{getattr(matter, key)}” in this order"
        yield _problem(matter.place.at(key), "unknown-id", said, "Write the id of an entry.")
    if not unknown and at[matter.first] >= at[matter.then]:
        said = f"“{matter.first}” does not stand before “{matter.then}” in the entries"
        hint = "The entries are written in the right order; change one or the other."
        yield _problem(matter.place.at("first"), "bad-value", said, hint)


def _problem(place: Place, rule: str, message: str, hint: str = "") -> Problem:
    return Problem(place=place, rule=rule, level=Level.NEVER, message=message, hint=hint)
