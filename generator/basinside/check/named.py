"""Which values and sources the content refers to."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from basinside.model.content import Content
from basinside.model.entry import Entry
from basinside.model.prose import references


def named(content: Content) -> frozenset[str]:
    """Return the ids of values and sources that something refers to, the entry itself aside.

    Values are named by fields, by what an item rests on, and inside sentences; a citation begins
    with the id of its source. Looking ends once everything was found.
    """
    wanted = frozenset((*content.figures, *content.sources))
    left = set(wanted - content.named)
    for each in _whole(content):
        found: set[str] = set()
        _gather("", each, found)
        left -= found
        if not left:
            break
    return wanted - left


def _whole(content: Content) -> Iterator[Any]:
    """Yield all but procedures and questions: what those name was seen when they were read."""
    yield from content.figures.values()
    yield from content.choices.values()
    yield content.handbook
    yield from content.agents.values()
    yield from content.routes.values()
    yield from content.equipment.values()
    yield from content.incidents.values()
    yield from content.words.values()
    yield from content.instruments.values()


def _gather(key: str, value: Any, found: set[str]) -> None:
    """Put into a set what a field refers to: a source before its place, and ids with a dot."""
    if isinstance(value, str):
        if key == "source":
            found.add(value.partition(" ")[0])
        elif "{{" in value:
            found.update(each.figure for each in references(value))
        elif "." in value and " " not in value:
            found.add(value)
    elif isinstance(value, Entry):
        fields = vars(value)
        for name in value.model_fields_set:  # those that were written, few of many
            if name != "place":
                _gather(name, fields[name], found)
    elif isinstance(value, dict):
        found.update(value)
        for inside in value.values():
            _gather("", inside, found)
    elif isinstance(value, tuple):
        for inside in value:
            _gather(key, inside, found)
