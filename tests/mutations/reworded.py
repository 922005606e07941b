"""The same clinic with other words: every id renamed, every sentence about nothing."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from typing import Final

import yaml

from basinside.model.content import Content
from basinside.model.words import ALL_LISTS, PRINTS_OF, PRINTS_OF_CLINIC
from tests.mutations.cuts import root_of

SENTENCES: Final = frozenset({"do", "wall", "why", "say", "see"})
"""Keys of a step, and of what is in it, whose words say something to people only."""
REFERENCE: Final = re.compile(r"\{\{.*?\}\}")
"""A value in a sentence: a field among words, which stays."""
_CLOSED: Final = frozenset(
    {word for words in ALL_LISTS.values() for word in words}
    | {*PRINTS_OF, *PRINTS_OF_CLINIC, "all", "yes", "no", "true", "false", "none"}
)


def ids_of(content: Content) -> set[str]:
    """Return the ids that a clinic chose itself, but for those that are also words of a list."""
    found: set[str] = set()
    for named in (
        content.sources,
        content.agents,
        content.routes,
        content.equipment,
        content.incidents,
        content.instruments,
        content.procedures,
    ):
        found.update(named)
    for procedure in content.procedures.values():
        found.update(step.step for _, step in procedure.steps)
    for instrument in content.instruments.values():
        found.update(part.part for part in instrument.parts)
    return {each for each in found if each not in _CLOSED and "-" in each}


def renamed(raw: Mapping[str, bytes], ids: Iterable[str]) -> dict[str, bytes]:
    """Return a clinic's files with ids renamed wherever they stand, in file names too."""
    new = {name: f"n{n}-{name[::-1].replace('-', '')}" for n, name in enumerate(sorted(ids))}
    pattern = re.compile(
        r"(?<![\w.-])("
        + "|".join(map(re.escape, sorted(new, key=len, reverse=True)))
        + r")(?![\w-])"
    )

    def put(found: re.Match[str]) -> str:
        return new[found[1]]

    return {pattern.sub(put, name): _put(each, pattern, put) for name, each in raw.items()}


def _put(raw: bytes, pattern: re.Pattern[str], put: object) -> bytes:
    try:
        return pattern.sub(put, raw.decode()).encode()  # type: ignore[call-overload]
    except UnicodeDecodeError:
        return raw


def reworded(raw: Mapping[str, bytes]) -> dict[str, bytes]:
    """Return a clinic's files with each sentence of each step saying nothing but its values."""
    return {
        name: _said_nothing(each.decode()).encode() if "/procedures/" in name else each
        for name, each in raw.items()
    }


def _said_nothing(text: str) -> str:
    places: list[tuple[int, int, str]] = []
    _sentences(root_of(text), places)
    for start, end, words in sorted(places, reverse=True):
        text = text[:start] + words + text[end:]
    return text


def _sentences(node: yaml.Node, places: list[tuple[int, int, str]]) -> None:
    if isinstance(node, yaml.SequenceNode):
        for each in node.value:
            _sentences(each, places)
    if not isinstance(node, yaml.MappingNode):
        return
    for key, value in node.value:
        if isinstance(value, yaml.ScalarNode) and key.value in SENTENCES - {"see"}:
            end = value.end_mark.index
            named = "".join(f" {each[0]}" for each in REFERENCE.finditer(value.value))
            words = f'"This says nothing{named}."'
            if value.style in {">", "|"}:
                words += "\n" + " " * value.end_mark.column
            places.append((value.start_mark.index, end, words))
        else:
            _sentences(value, places)
