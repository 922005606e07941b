"""The texts of an item as a reader sees them, and their words, read once for all rules."""

from __future__ import annotations

import re
import sys
from collections.abc import Iterable, Mapping
from contextlib import suppress
from dataclasses import dataclass
from functools import cached_property
from typing import Final

from basinside.model.content import Content
from basinside.model.figure import Figure
from basinside.model.item_kinds import Option
from basinside.model.prose import Words, read_prose
from basinside.model.quiz import Item
from basinside.quantity import NO_BREAK_SPACE, QuantityError

_WORD: Final = re.compile(r"[^\W_]+(?:['’-][^\W_]+)*")
_SENTENCE_END: Final = re.compile(r"(?<=[.!?])\s+")


@dataclass(frozen=True, slots=True)
class ReadOption:
    """An option, its text with each value filled in, and the words of the text, all small."""

    option: Option
    text: str
    words: tuple[str, ...]

    @property
    def is_right(self) -> bool:
        """Whether the author marked it right."""
        return self.option.is_right


@dataclass(frozen=True)
class ReadItem:
    """An item where it stands, with its texts as they are shown and their words, all small.

    ``scenario`` is the id of its scenario or nothing; ``situation`` holds the scenario's own too.
    """

    item: Item
    topic: str
    pool: str
    scenario: str
    situation: str
    stem: str
    stem_words: tuple[str, ...]
    options: tuple[ReadOption, ...]

    @property
    def name(self) -> str:
        """The item's id."""
        return self.item.item

    @cached_property
    def right(self) -> tuple[ReadOption, ...]:
        """The options that are right."""
        return tuple(each for each in self.options if each.is_right)

    @cached_property
    def wrong(self) -> tuple[ReadOption, ...]:
        """The options that are wrong."""
        return tuple(each for each in self.options if not each.is_right)

    @cached_property
    def situation_words(self) -> tuple[str, ...]:
        """The words of the situation."""
        return words_of(self.situation)

    @cached_property
    def question(self) -> str:
        """The last sentence of the stem."""
        return _SENTENCE_END.split(self.stem)[-1]

    @cached_property
    def question_words(self) -> tuple[str, ...]:
        """The words of the last sentence of the stem."""
        return self.stem_words if self.question == self.stem else words_of(self.question)


def read_items(content: Content) -> tuple[ReadItem, ...]:
    """Return every item in file order, read."""
    figures = content.figures
    out = []
    for asked in content.items():
        item = asked.item
        stem = filled_in(item.stem, figures)
        options = []
        for option in item.options:
            text = filled_in(option.text, figures)
            options.append(ReadOption(option, text, words_of(text)))
        out.append(
            ReadItem(
                item=item,
                topic=asked.topic,
                pool=asked.pool,
                scenario=asked.scenario.scenario if asked.scenario else "",
                situation=filled_in(asked.situation, figures),
                stem=stem,
                stem_words=words_of(stem),
                options=tuple(options),
            )
        )
    return tuple(out)


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
    return tuple(map(sys.intern, _WORD.findall(text.casefold())))


def holds_run(words: tuple[str, ...], run: tuple[str, ...]) -> bool:
    """Return whether words hold a run of others, one behind the other."""
    size = len(run)
    return any(
        words[n : n + size] == run
        for n, word in enumerate(words[: -size + 1 or None])
        if word == run[0]
    )
