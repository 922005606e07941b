"""How hard a text is to read, from counts of its words and sentences.

Source: Kincaid, Fishburne, Rogers and Chissom, Derivation of new readability formulas for Navy
enlisted personnel, Research Branch Report 8-75, 1975 (grade); Björnsson, Läsbarhet, 1968 (LIX).
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Final

LONG_WORD: Final = 6
"""Letters that a word of LIX may have and still be short (Björnsson 1968)."""

_VOWELS: Final = re.compile(r"[aeiouyàâäéèêëîïôöùûü]+")
_SOUNDED_ENDS: Final = ("ces", "ges", "ses", "ches", "shes", "xes", "zes")
_SILENT_END: Final = re.compile(r"(?:[^laeiouy]es|[^aeioutdy]ed|[^laeiouy]e)$")


def school_grade(words: int, sentences: int, syllables: int) -> float:
    """Return the years of school that an English text asks for (Flesch and Kincaid).

    >>> round(school_grade(100, 5, 150), 2)
    9.91
    """
    return 0.39 * words / sentences + 11.8 * syllables / words - 15.59


def lix(words: int, sentences: int, long_words: int) -> float:
    """Return the LIX of a text of any language that has words: below 40 is easy.

    >>> lix(100, 5, 25)
    45.0
    """
    return words / sentences + 100 * long_words / words


def syllables(word: str) -> int:
    """Return about how many syllables an English word has: groups of vowels, silent ends aside.

    >>> [syllables(word) for word in ("the", "rinse", "colour", "detergent", "aspirator")]
    [1, 1, 2, 3, 4]
    """
    small = word.casefold()
    groups = len(_VOWELS.findall(small))
    if groups > 1 and _SILENT_END.search(small) and not small.endswith(_SOUNDED_ENDS):
        groups -= 1
    return max(groups, 1)


class SyllableCounts(dict[str, int]):
    """Words to their syllables, each counted once."""

    def __missing__(self, word: str) -> int:
        found = self[word] = syllables(word)
        return found

    def of(self, words: Iterable[str]) -> int:
        """Return about how many syllables English words have together."""
        return sum(map(self.__getitem__, words))
