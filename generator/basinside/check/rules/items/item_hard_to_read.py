"""The rule item-hard-to-read."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import chain
from typing import Final

from basinside.check.checked import Checked
from basinside.check.item_texts import ReadItem
from basinside.check.known_words import known_words
from basinside.check.rule import Finding, rule
from basinside.model.handbook import Reading
from basinside.problem import Level
from basinside.science.reading_ease import LONG_WORD, SyllableCounts, lix, school_grade

_STEM_WORDS: Final = 40
_LIX: Final = 40
_GRADE: Final[int] = Reading.model_fields["grade"].default
_END: Final = re.compile(r"[.!?:](?:\s|$)")
_WITH_SYLLABLES: Final = "en"


@rule(level=Level.WARN)
def check_item_hard_to_read(checked: Checked) -> Iterator[Finding]:
    """An item is as easy to read as the handbook asks: `reading: {grade: 8}`.

    A stem has at most 40 words. The situation, the stem and the options together ask for no more
    years of school than the grade (Flesch and Kincaid, in English), or have a LIX of at most 40 in
    other languages. Words of the glossary and of names do not count as long.
    Why: an item is about an instrument and not about reading. Who reads slowly, or in a second
    language, would fail on words.
    Bad: `stem: Which consideration predominantly determines the immersion duration?`
    Good: `stem: What decides how long it stays in the bath?`
    Source: Kincaid and others, Derivation of new readability formulas, 1975; Björnsson, Läsbarhet,
    1968; the limits are our own.
    """
    handbook = checked.content.handbook
    if handbook is None:
        return
    limit = handbook.reading.grade if handbook.reading else _GRADE
    english = handbook.language.partition("-")[0].casefold() == _WITH_SYLLABLES
    known = known_words(checked.content)
    sounds, ended = _Sounds(checked.syllables), _Ended()
    for read in checked.items:
        if len(read.stem_words) > _STEM_WORDS:
            yield Finding(
                read.item.place.at("stem"),
                f"the stem of {read.name} has {len(read.stem_words)} words; at most {_STEM_WORDS}"
                " are asked for",
                "Put what is given under “situation”.",
                (read.item.place,),
            )
        texts = [read.situation_words, read.stem_words, *[each.words for each in read.options]]
        words = sum(map(len, texts))
        if not words:
            continue
        sentences = max(ended[read.situation] + ended[read.stem], 1) + len(read.options)
        if english:
            hard = school_grade(words, sentences, sum(map(sounds.__getitem__, texts)))
            if hard > limit:
                said = f"asks for {hard:.1f} years of school; the handbook asks for {limit}"
                yield _hard(read, said)
            continue
        long = sum(len(w) > LONG_WORD and w not in known for w in chain(*texts))
        hard = lix(words, sentences, long)
        if hard > _LIX:
            yield _hard(read, f"has a LIX of {hard:.0f}; at most {_LIX} is asked for")


def _hard(read: ReadItem, said: str) -> Finding:
    return Finding(read.item.place, f"{read.name} {said}", "Use shorter words and sentences.")


class _Sounds(dict[tuple[str, ...], int]):
    """The words of texts to their syllables, each text counted once."""

    def __init__(self, syllables: SyllableCounts) -> None:
        super().__init__()
        self._syllables = syllables

    def __missing__(self, words: tuple[str, ...]) -> int:
        found = self[words] = self._syllables.of(words)
        return found


class _Ended(dict[str, int]):
    """Texts to how many sentences end in them, each text counted once."""

    def __missing__(self, text: str) -> int:
        found = self[text] = len(_END.findall(text))
        return found
