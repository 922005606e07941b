"""The texts of an item as a reader sees them, and their words, read once for all rules."""

from __future__ import annotations

import re
import sys
from collections.abc import Iterable, Mapping
from contextlib import suppress
from itertools import chain
from typing import Final, NamedTuple

from basinside.model.content import AskedItem, Content
from basinside.model.figure import Figure
from basinside.model.item_kinds import Option
from basinside.model.prose import Words, read_prose
from basinside.model.quiz import Item
from basinside.quantity import NO_BREAK_SPACE, QuantityError

_BETWEEN: Final = str.maketrans(dict.fromkeys('!"#$%&()*+,./:;<=>?@[\\]^_`{|}~“”„«»…–—', " "))
"""What stands between words; hyphens and apostrophes stand in them."""

_BREAK: Final = re.compile(r"(?<=[.!?]) ")


class ReadOption(NamedTuple):
    """An option, its text with each value filled in, and the words of the text, all small."""

    option: Option
    is_right: bool
    text: str
    words: tuple[str, ...]


class ReadItem(NamedTuple):
    """An item where it stands, with its texts as they are shown and their words, all small.

    ``scenario`` is the id of its scenario or nothing; ``situation`` holds the scenario's own too;
    ``question`` is the last sentence of the stem; ``right`` and ``wrong`` are parts of ``options``;
    ``said`` are those of all its words that were looked for.
    """

    item: Item
    topic: str
    pool: str
    scenario: str
    situation: str
    situation_words: tuple[str, ...]
    stem: str
    stem_words: tuple[str, ...]
    question: str
    question_words: tuple[str, ...]
    options: tuple[ReadOption, ...]
    right: tuple[ReadOption, ...]
    wrong: tuple[ReadOption, ...]
    said: frozenset[str]

    @property
    def name(self) -> str:
        """The item's id."""
        return self.item.item


def read_items(content: Content, looked_for: frozenset[str]) -> tuple[ReadItem, ...]:
    """Return every item in file order, read, with which of the words looked for it says."""
    figures = content.figures
    return tuple([_read(asked, figures, looked_for) for asked in content.items()])


def _read(asked: AskedItem, figures: Mapping[str, Figure], looked_for: frozenset[str]) -> ReadItem:
    item = asked.item
    situation, stem = filled_in(asked.situation, figures), filled_in(item.stem, figures)
    stem_words = question_words = words_of(stem)
    question = stem
    if _BREAK.search(stem):
        question = _BREAK.split(stem)[-1]
        question_words = words_of(question)
    options = []
    for option in item.options:
        text = filled_in(option.text, figures)
        options.append(ReadOption(option, option.right is not None, text, words_of(text)))
    situation_words = words_of(situation) if situation else ()
    all_words = chain(situation_words, stem_words, *[each.words for each in options])
    return ReadItem(
        item,
        asked.topic,
        asked.pool,
        asked.scenario.scenario if asked.scenario else "",
        situation,
        situation_words,
        stem,
        stem_words,
        question,
        question_words,
        tuple(options),
        tuple([each for each in options if each.is_right]),
        tuple([each for each in options if not each.is_right]),
        looked_for.intersection(all_words),
    )


def by_topic(items: Iterable[ReadItem], pool: str) -> dict[str, list[ReadItem]]:
    """Return the items of a pool by their topic."""
    found: dict[str, list[ReadItem]] = {}
    for read in items:
        if read.pool == pool:
            found.setdefault(read.topic, []).append(read)
    return found


def filled_in(text: str, figures: Mapping[str, Figure]) -> str:
    """Return a sentence on one line, with values where it refers to them, in plain spaces."""
    if "{{" not in text:
        return " ".join(text.split()) if "\n" in text or "  " in text else text.strip()
    parts = []
    for span in read_prose(text):
        if isinstance(span, Words):
            parts.append(span.text)
            continue
        figure = figures.get(span.figure)
        if figure is None:
            parts.append(span.figure)
            continue
        value = figure.value
        if span.unit:
            with suppress(QuantityError):
                value = value.in_unit(span.unit)
        parts.append(value.text().replace(NO_BREAK_SPACE, " "))
    return "".join(parts)


def words_of(text: str) -> tuple[str, ...]:
    """Return the words of a text in small letters; equal words are one object, to save room."""
    return tuple(map(sys.intern, text.casefold().translate(_BETWEEN).split()))


def holds_run(words: tuple[str, ...], run: tuple[str, ...]) -> bool:
    """Return whether words hold a run of others, one behind the other."""
    size = len(run)
    return any(
        words[n : n + size] == run
        for n, word in enumerate(words[: -size + 1 or None])
        if word == run[0]
    )
