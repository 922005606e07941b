"""The rule reading-level."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.item_sentences import item_texts
from basinside.check.reading import Counted, Reader, together
from basinside.check.rule import Finding, rule
from basinside.check.sentences import Sentence
from basinside.model.handbook import Reading
from basinside.problem import Level, Place

_ENOUGH: Final = 100
"""Words below which an average says little (our own limit)."""
_GRADE: Final[int] = Reading.model_fields["grade"].default
_WITH_SYLLABLES: Final = "en"
_SHORTER_FORM: Final = "wall"
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
    by_file: dict[str, list[Sentence]] = {}
    for each in checked.besides_items:
        if each.key != _SHORTER_FORM:
            by_file.setdefault(each.entry.file, []).append(each)
    for file, sentences in by_file.items():
        for entry, sample in _samples(checked.reader, file, sentences):
            counted = _counted(checked.reader, [each.text for each in sample])
            if counted.words >= _ENOUGH and counted.grade > limit:
                yield _hard(checked.reader, entry, sample, counted, limit)
    for questions in checked.content.questions:
        counted = _counted(checked.reader, item_texts(questions))
        if counted.words >= _ENOUGH and counted.grade > limit:
            file = questions.place.file
            sample = [each for each in checked.prose if each.entry.file == file]
            yield _hard(checked.reader, questions.place, sample, counted, limit)


def _samples(
    reader: Reader, file: str, sentences: list[Sentence]
) -> Iterator[tuple[Place, list[Sentence]]]:
    """Yield what is judged together: most files are one entry, some hold many, short and long."""
    if not any(each.entry.path[:1] and each.entry.path[0] in _MANY_IN_A_FILE for each in sentences):
        yield Place(file), sentences
        return
    entries: dict[Place, list[Sentence]] = {}
    for each in sentences:
        entries.setdefault(Place(file, each.entry.path[:2]), []).append(each)
    short: list[Sentence] = []
    for entry, sample in entries.items():
        if _counted(reader, [each.text for each in sample]).words < _ENOUGH:
            short += sample
        else:
            yield entry, sample
    yield Place(file), short


def _counted(reader: Reader, texts: list[str]) -> Counted:
    return together(map(reader.__getitem__, texts))


def _hard(
    reader: Reader, entry: Place, sample: list[Sentence], counted: Counted, limit: int
) -> Finding:
    (_, hardest), worst = max(
        ((reader.hardest(each.text), each) for each in sample), key=lambda pair: pair[0]
    )
    name = entry.path[-1] if entry.path else entry.file.rpartition("/")[2].partition(".")[0]
    return Finding(
        worst.place,
        f"{name} asks for {counted.grade:.1f} years of school; the handbook asks for {limit}",
        f"Use shorter words and sentences, first in “{hardest}”",
        (worst.entry, entry),
    )
