"""Words without their endings, so that one form of a word is found in any other, by language.

A language without a list has none: there a word is found only as it is written.
"""

from __future__ import annotations

from typing import Final

_ENDINGS: Final = {"en": ("ings", "ing", "ed", "es", "s", "e")}
"""The endings that English words take in a sentence, the longest first."""
_LEAST: Final = 3


def bare(word: str, language: str) -> str:
    """Return a word in small letters without its ending, for comparing only.

    >>> sorted({bare(word, "en") for word in ("dry", "dries", "dried", "rub", "rubbing")})
    ['dri', 'rub']
    """
    for ending in _ENDINGS.get(language, ()):
        if word.endswith(ending) and len(word) >= _LEAST + len(ending):
            word = word.removesuffix(ending)
            break
    if language in _ENDINGS and len(word) >= _LEAST:
        if word.endswith("y"):
            return f"{word[:-1]}i"
        if len(word) > _LEAST and word[-1] == word[-2]:
            return word[:-1]
    return word
