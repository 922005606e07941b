"""The rule reading-level."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.reading import Counted, together
from basinside.check.rule import Finding, rule
from basinside.check.sentences import WALL
from basinside.model.handbook import Reading
from basinside.problem import Level, Place

_ENOUGH: Final = 100
"""Words below which an average says little (our own limit)."""
_GRADE: Final[int] = Reading.model_fields["grade"].default
_WITH_SYLLABLES: Final = "en"
_MANY_IN_A_FILE: Final = frozenset({"incidents", "choices", "figures", "words", "equipment"})


@rule(level=Level.WARN)
def check_reading_level(checked: Checked) -> Iterator[Finding]:
    """The sentences of a procedure, an instrument, a chemical or questions are easy to read.

    They ask for no more years of school than the handbook says, `reading: {grade: 8}` (Flesch and
    Kincaid, in English; other languages are not judged). Incidents, choices and words of the
    glossary are judged one by one where they have 100 words, and together in their file where they
    have fewer. Words of the glossary and of names do not count as long, and what hangs on the wall
    is not read twice.
    Why: who reads slowly, or in a second language, works by what is easy to read and guesses at the
    rest.
    Bad: `why: Inadequately decontaminated instrumentation perpetuates transmission.`
    Good: `why: What was not washed well carries germs to the next patient.`
    Source: Kincaid and others, Derivation of new readability formulas for Navy enlisted personnel,
    1975; the limits are our own.
    """
    handbook = checked.content.handbook
    if handbook is None or handbook.language.partition("-")[0].casefold() != _WITH_SYLLABLES:
        return
    limit = handbook.reading.grade if handbook.reading else _GRADE
    reader = checked.reader
    for entry, texts in _samples(checked):
        counted = together(map(reader.__getitem__, texts))
        if counted.words >= _ENOUGH and counted.grade > limit:
            yield _hard(checked, entry, frozenset(texts), counted, limit)


def _samples(checked: Checked) -> Iterator[tuple[Place, list[str]]]:
    """Yield what is judged together; most files are one entry, some hold many, short and long."""
    by_file: dict[str, list[str]] = {}
    entries: dict[Place, list[str]] = {}
    for file, said in checked.said_in_procedures.items():
        by_file[file] = [text for _, key, text in said if key != WALL]
    for each in checked.elsewhere:
        place = each.entry
        if place.path and place.path[0] in _MANY_IN_A_FILE:
            entries.setdefault(Place(place.file, place.path[:2]), []).append(each.text)
        else:
            by_file.setdefault(place.file, []).append(each.text)
    for entry, texts in entries.items():
        if sum(checked.reader[text].words for text in texts) < _ENOUGH:
            by_file.setdefault(entry.file, []).extend(texts)
        else:
            yield entry, texts
    for file, texts in (*by_file.items(), *checked.item_texts.items()):
        yield Place(file), texts


def _hard(
    checked: Checked, entry: Place, texts: frozenset[str], counted: Counted, limit: int
) -> Finding:
    hardest, text = max((checked.reader.hardest(text), text) for text in texts)
    depth = len(entry.path)
    worst = next(
        each
        for each in checked.prose
        if each.text == text and (each.entry.file, each.entry.path[:depth]) == entry[:2]
    )
    name = entry.path[-1] if entry.path else entry.file.rpartition("/")[2].partition(".")[0]
    return Finding(
        worst.place,
        f"{name} asks for {counted.grade:.1f} years of school; the handbook asks for {limit}",
        f"Use shorter words and sentences, first in “{hardest[1]}”",
        (worst.entry, entry),
    )
