"""The rule sentence-too-long."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import chain
from typing import Final

from basinside.check.checked import Checked
from basinside.check.reading import Reader, sentences_of, words_in
from basinside.check.rule import Finding, rule
from basinside.check.sentences import Sentence
from basinside.model.content import Content
from basinside.model.handbook import Reading
from basinside.problem import Level

_WORDS: Final[int] = Reading.model_fields["words"].default
_SAFETY_WORDS: Final = 12


@rule(level=Level.WARN)
def check_sentence_too_long(checked: Checked) -> Iterator[Finding]:
    """A sentence has no more words than the handbook says: `reading: {words: 20}`.

    What to do in a safety step, on the page and on the wall, is said in at most 12. A value counts
    as it is shown; what a hyphen joins is one word.
    Why: who looks up from wet hands takes in one thing at a time.
    Bad: `do: Put all parts into the bath, push them under, and fill the tubes before you start.`
    Good: `do: Push all parts under. Fill the tubes. Then start the time.`
    Source: common practice.
    """
    handbook = checked.content.handbook
    if handbook is None:
        return
    most = handbook.reading.words if handbook.reading else _WORDS
    reader, safety_most = checked.reader, min(most, _SAFETY_WORDS)
    for said in _told_in_safety_steps(checked.content, reader, safety_most):
        yield from _too_long(reader, said, safety_most, " in a safety step")
    if any(counted.longest > most for counted in reader.values()):
        judged = set(_told_in_safety_steps(checked.content, reader, most))
        for said in checked.prose:
            if reader[said.text].longest > most and said not in judged:
                yield from _too_long(reader, said, most, "")


def _told_in_safety_steps(content: Content, reader: Reader, most: int) -> Iterator[Sentence]:
    """Yield what is to be done in safety steps and has a sentence of more words."""
    for procedure in content.procedures.values():
        for step in chain.from_iterable(stage.steps for stage in procedure.stages):
            if step.safety:
                if reader[step.do].longest > most:
                    yield Sentence(step.place, "do", step.do)
                if step.wall and reader[step.wall].longest > most:
                    yield Sentence(step.place, "wall", step.wall)


def _too_long(reader: Reader, said: Sentence, most: int, where: str) -> Iterator[Finding]:
    for sentence in sentences_of(reader.seen(said.text)):
        words = len(words_in(sentence))
        if words > most:
            yield Finding(
                said.place,
                f"“{sentence}” has {words} words; at most {most} are asked for{where}",
                "Make two sentences of it, or leave words out.",
                (said.entry,),
            )
