"""Texts in sentences and words, counted for how long and how hard to read they are.

A word is what stands between spaces and has more in it than marks: a number is one, so is what a
hyphen joins, and so is %, which is read aloud.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from typing import Final, NamedTuple

from basinside.check.item_texts import filled_in
from basinside.model.figure import Figure
from basinside.science.reading_ease import SyllableCounts, school_grade

_BREAK: Final = re.compile(r"(?:(?<=[.?!])|(?<=[.?!][”»\"')]))\s+")
_SIGNS: Final = "!\"#&'()*+,-./:;<=>?@[]_{|}~¡«·»¿‐–—‘’“”„…×"
_ENDS: Final = (".", "?", "!")
_CLOSING: Final = "”»\"')"
_IS_END: Final = bytes(mark & 1 for mark in range(256))


class Counted(NamedTuple):
    """What was counted in texts.

    ``sentences``, ``words`` and ``syllables`` are of whole sentences; a few words without a full
    stop, such as the text of an option, are none. ``longest`` is the number of words of the longest
    piece, whole or not.
    """

    sentences: int = 0
    words: int = 0
    syllables: int = 0
    longest: int = 0

    @property
    def grade(self) -> float:
        """Years of school asked for (Flesch and Kincaid); none where no sentence is whole."""
        if not self.words:
            return 0.0
        return school_grade(self.words, self.sentences, self.syllables)


def sentences_of(text: str) -> list[str]:
    """Return the sentences of a text on one line, each with its end.

    >>> sentences_of("Wait 2.5 min. Is it “cold”? Go on")
    ['Wait 2.5 min.', 'Is it “cold”?', 'Go on']
    """
    return _BREAK.split(text)


def words_in(text: str) -> list[str]:
    """Return the words of a text, small and without the signs around them.

    >>> words_in("Heavy-duty gloves – 2.5 % or 1:10?")
    ['heavy-duty', 'gloves', '2.5', '%', 'or', '1:10']
    """
    return [bare for each in text.casefold().split() if (bare := each.strip(_SIGNS))]


def together(counts: Iterable[Counted]) -> Counted:
    """Return the counts of several texts as of one."""
    columns = list(zip(*counts, strict=True))
    if not columns:
        return Counted()
    sentences, words, syllables, longest = columns
    return Counted(sum(sentences), sum(words), sum(syllables), max(longest))


class Reader(dict[str, Counted]):
    """Texts to what is counted in them as readers see them, each counted once."""

    def __init__(
        self, figures: Mapping[str, Figure], syllables: SyllableCounts, texts: Iterable[str] = ()
    ) -> None:
        """Read texts with these values."""
        super().__init__()
        self._figures = figures
        self._marks = _Marks(syllables)
        for text in texts:
            self[text]

    def __missing__(self, text: str) -> Counted:
        found = self[text] = self.count(self.seen(text) if "{{" in text else text)
        return found

    @property
    def pieces(self) -> Iterable[str]:
        """What stood between spaces in the texts read so far, each once, as it was written."""
        return self._marks.keys()

    def seen(self, text: str) -> str:
        """Return a text on one line, each value filled in."""
        return filled_in(text, self._figures)

    def count(self, text: str) -> Counted:
        """Return what is counted in a text that refers to no value."""
        marks = bytes(map(self._marks.__getitem__, text.split())).replace(b"\0", b"")
        *ended, rest = map(len, marks.translate(_IS_END).split(b"\1"))
        if not ended:
            return Counted(0, 0, 0, rest)
        words, sentences = len(marks) - rest, len(ended)
        sounds = (sum(marks[:words]) - sentences) // 2
        return Counted(sentences, words, sounds, max(max(ended) + 1, rest))

    def hardest(self, text: str) -> tuple[float, str]:
        """Return the hardest whole sentence of a text, its years of school first."""
        return max((self.count(each).grade, each) for each in sentences_of(self.seen(text)))


class _Marks(dict[str, int]):
    """Pieces of text between spaces to twice their syllables, and one more where a sentence ends.

    A piece without a word, such as a dash alone, has 0. What has more than 127 syllables is no
    word, and counts as so many: a mark is one byte.
    """

    def __init__(self, syllables: SyllableCounts) -> None:
        super().__init__()
        self._syllables = syllables

    def __missing__(self, piece: str) -> int:
        word = piece.casefold().strip(_SIGNS)
        found = 0
        if word:
            found = 2 * min(self._syllables[word], 127) + piece.rstrip(_CLOSING).endswith(_ENDS)
        self[piece] = found
        return found
