"""How hard English is to read: sentences, words, and the Flesch-Kincaid grade."""

import re

from basinside.model.content import Content
from basinside.model.prose import Reference, Words, read_prose

_SENTENCE_END = re.compile(r"(?<=[.?!])\s+")
_WORD = re.compile(r"[A-Za-z][A-Za-z'-]*|\d[\d.,]*")
_VOWELS = re.compile(r"[aeiouy]+")


def said(text: str, content: Content) -> str:
    """Return a sentence with each reference as a reader sees it."""
    return "".join(
        span.text if isinstance(span, Words) else _shown(content, span) for span in read_prose(text)
    )


def _shown(content: Content, reference: Reference) -> str:
    value = content.figures[reference.figure].value
    return (value.in_unit(reference.unit) if reference.unit else value).text()


def sentences(text: str) -> list[str]:
    return [each for each in _SENTENCE_END.split(text.strip()) if each]


def words(text: str) -> list[str]:
    """Return the words; a number is one."""
    return _WORD.findall(text)


def syllables(word: str) -> int:
    """Return how many syllables a word has, about: groups of vowels, less a silent e."""
    low = word.lower()
    count = len(_VOWELS.findall(low))
    if low.endswith("e") and not low.endswith(("le", "ee")) and count > 1:
        count -= 1
    if low.endswith("ed") and not low.endswith(("ted", "ded")) and count > 1:
        count -= 1
    return max(count, 1)


def grade(texts: list[str]) -> float:
    """Return the Flesch-Kincaid grade of texts read as one (Kincaid and others 1975)."""
    all_sentences = [each for text in texts for each in sentences(text)]
    all_words = [word for each in all_sentences for word in words(each)]
    sounds = sum(map(syllables, all_words))
    return 0.39 * len(all_words) / len(all_sentences) + 11.8 * sounds / len(all_words) - 15.59
