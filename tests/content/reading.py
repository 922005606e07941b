"""How hard the demonstration is to read, by what the check counts with; no word counts as known."""

from functools import cache

from basinside.check.reading import Reader, sentences_of, together, words_in
from basinside.science.reading_ease import SyllableCounts
from tests.content.demo import content


@cache
def reader() -> Reader:
    """Return what counts the words of the demonstration's texts."""
    return Reader(content().figures, SyllableCounts())


def sentences(text: str | None) -> list[str]:
    """Return the sentences of a text as a reader sees them."""
    return sentences_of(reader().seen(text)) if text else []


def words(text: str) -> list[str]:
    """Return the words of a text as a reader sees it, in small letters; a number is one."""
    return words_in(reader().seen(text))


def grade(texts: list[str]) -> float:
    """Return the years of school that texts read as one ask for (Kincaid and others 1975)."""
    return together([reader()[text] for text in texts]).grade
