"""The texts of an item as a reader sees them, and their words, read once for all rules."""

from __future__ import annotations

import re
import sys
from collections.abc import Iterable, Mapping
from contextlib import suppress
from typing import Final, NamedTuple

from basinside.model.content import AskedItem, Content
from basinside.model.figure import Figure
from basinside.model.item_kinds import Option
from basinside.model.prose import Words, read_prose, references
from basinside.model.quiz import Item, RestsOn
from basinside.model.words import ItemKind
from basinside.quantity import NO_BREAK_SPACE, QuantityError

_BETWEEN: Final = tuple('!"#$%&()*+,./:;<=>?@[\\]^_`{|}~“”„«»…–—')
"""What stands between words; hyphens and apostrophes stand in them."""

_BREAK: Final = re.compile(r"(?<=[.!?]) ")
_DIGIT: Final = re.compile(r"[0-9]")


class ReadOption(NamedTuple):
    """An option, its text with each value filled in, and the words of the text, all small.

    ``figures`` are the ids of those values. ``because`` and ``shows`` are the option's own: asked
    of every option, they stand close by.
    """

    option: Option
    is_right: bool
    text: str
    words: tuple[str, ...]
    figures: tuple[str, ...]
    because: str | None
    shows: str | None


class ReadItem(NamedTuple):
    """An item where it stands, with its texts as they are shown and their words, all small.

    ``scenario`` is the id of its scenario or nothing; ``situation`` holds the scenario's own too;
    ``question`` is the last sentence of the stem; ``right`` and ``wrong`` are parts of ``options``;
    ``said`` are those of all its words that were looked for. ``in_figures`` is the number of
    options with a number in figures; ``clear`` whether each option is either right or wrong;
    ``options_only`` whether it has no other block to answer with. The rest is the item's own.
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
    in_figures: int
    clear: bool
    options_only: bool
    kind: ItemKind
    rests_on: RestsOn | None
    about: tuple[str, ...]
    picture: str | None

    @property
    def name(self) -> str:
        """The item's id."""
        return self.item.item


class _Shown(NamedTuple):
    """A text as it is shown, its words, and which of them were looked for."""

    text: str
    words: tuple[str, ...]
    said: frozenset[str]


class _Texts(dict[str, _Shown]):
    """Texts as authors wrote them to what is read in them, each read once."""

    def __init__(self, figures: Mapping[str, Figure], looked_for: frozenset[str]) -> None:
        super().__init__()
        self._figures = figures
        self._looked_for = looked_for

    def __missing__(self, written: str) -> _Shown:
        text = filled_in(written, self._figures)
        words = words_of(text)
        found = self[written] = _Shown(text, words, self._looked_for.intersection(words))
        return found


class _Questions(dict[str, tuple[str, tuple[str, ...]]]):
    """Stems as they are shown to their last sentences and the words of these."""

    def __missing__(self, stem: str) -> tuple[str, tuple[str, ...]]:
        last = _BREAK.split(stem)[-1]
        found = self[stem] = last, words_of(last)
        return found


class _Numbers(dict[str, tuple[tuple[str, ...], bool]]):
    """Options as authors wrote them to their values, and whether they show a number in figures."""

    def __init__(self, texts: _Texts) -> None:
        super().__init__()
        self._texts = texts

    def __missing__(self, written: str) -> tuple[tuple[str, ...], bool]:
        named = tuple([each.figure for each in references(written)])
        found = self[written] = named, _DIGIT.search(self._texts[written].text) is not None
        return found


def read_items(content: Content, looked_for: frozenset[str]) -> tuple[ReadItem, ...]:
    """Return every item in file order, read, with which of the words looked for it says."""
    texts = _Texts(content.figures, looked_for)
    questions, numbers = _Questions(), _Numbers(texts)
    return tuple([_read(asked, texts, questions, numbers) for asked in content.items()])


def _read(asked: AskedItem, texts: _Texts, questions: _Questions, numbers: _Numbers) -> ReadItem:
    item = asked.item
    before, stem = texts[asked.situation], texts[item.stem]
    question, question_words = questions[stem.text]
    said = before.said | stem.said
    options: list[ReadOption] = []
    right: list[ReadOption] = []
    wrong: list[ReadOption] = []
    in_figures, clear = 0, True
    for option in item.options:
        is_right = option.right is not None
        written = option.text
        shown, (figures, in_figure) = texts[written], numbers[written]
        read = ReadOption(
            option, is_right, shown.text, shown.words, figures, option.because, option.shows
        )
        options.append(read)
        (right if is_right else wrong).append(read)
        in_figures += in_figure
        clear = clear and is_right is (option.wrong is None)
        if shown.said:
            said |= shown.said
    return ReadItem(
        item,
        asked.topic,
        asked.pool,
        asked.scenario.scenario if asked.scenario else "",
        before.text,
        before.words,
        stem.text,
        stem.words,
        question,
        question_words,
        tuple(options),
        tuple(right),
        tuple(wrong),
        said,
        in_figures,
        clear,
        not (item.entries or item.matters or item.number or item.pairs or item.extra),
        item.kind,
        item.rests_on,
        item.about,
        item.picture,
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
    small = text.casefold()
    for sign in _BETWEEN:  # few stand in a text, and looking for one costs next to nothing
        if sign in small:
            small = small.replace(sign, " ")
    return tuple(map(sys.intern, small.split()))


def holds_run(words: tuple[str, ...], run: tuple[str, ...]) -> bool:
    """Return whether words hold a run of others, one behind the other."""
    size = len(run)
    return any(
        words[n : n + size] == run
        for n, word in enumerate(words[: -size + 1 or None])
        if word == run[0]
    )
