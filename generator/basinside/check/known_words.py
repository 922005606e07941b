"""The words that readers of a handbook know: those of its glossary and of names in it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from typing import Final

from basinside.model.content import Content
from basinside.units import UNITS

_SHORT: Final = re.compile(r"[A-Z][A-Z0-9]*[A-Z][A-Z0-9]*s?(?![\w-])")
CAPITALS: Final = re.compile(r"[A-Z][A-Z0-9]")
"""Stands in every text with a short form."""
_JOINS: Final = ("-", "_")


def known_words(content: Content) -> frozenset[str]:
    """Return the words of the glossary and of the names of instruments and chemicals, all small."""
    named = (
        *_glossary(content),
        *(each.name for each in content.instruments.values()),
        *(each.name for each in content.agents.values()),
    )
    return frozenset(word for text in named for word in text.casefold().split())


def short_forms(text: str) -> Iterator[str]:
    """Yield the words of a text that are of capitals: two or more, and perhaps numbers and an s."""
    for found in _SHORT.finditer(text):
        before = text[found.start() - 1 : found.start()]
        if not (before.isalnum() or before in _JOINS):
            yield found[0]


def explained_forms(content: Content) -> frozenset[str]:
    """Return what needs no explaining: words of the glossary, of names, and units."""
    handbook = content.handbook
    named = (
        *_glossary(content),
        *(each.name for each in content.agents.values()),
        *(each.name for each in content.equipment.values()),
        *(each.name for each in content.instruments.values()),
        *(each.name or "" for each in (handbook.clinic.vessels if handbook else ())),
        *UNITS,
    )
    return frozenset(word.strip("(),.") for text in named for word in text.split())


def is_explained(short: str, explained: frozenset[str], text: str) -> bool:
    """Return whether a short form is known, or stands in brackets in the text."""
    bare = short.removesuffix("s")
    return not explained.isdisjoint((short, bare, bare.casefold())) or f"({bare}" in text


def said_loudly(shorts: Iterable[str], text: str) -> set[str]:
    """Return those that are no short forms, since the text has the same word in small letters."""
    return {short for short in shorts if re.search(rf"\b{short.casefold()}\b", text)}


def _glossary(content: Content) -> tuple[str, ...]:
    return tuple(text for word in content.words.values() for text in (word.word, *word.also))
