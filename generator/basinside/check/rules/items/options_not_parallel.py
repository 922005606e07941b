"""The rule options-not-parallel."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from basinside.check.checked import Checked
from basinside.check.item_texts import ReadItem, ReadOption
from basinside.check.item_words import ItemWords
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.INFO)
def check_options_not_parallel(checked: Checked) -> Iterator[Finding]:
    """No option alone begins or ends otherwise than all the others.

    Looked at: a small letter at the beginning; a word for what is being done at the beginning; a
    stop at the end.
    Why: what is built otherwise catches the eye, and a reader takes it for the right one or the
    odd one out.
    Bad: `wrong: Boil it`, `wrong: Wipe it`, `right: Rinsing it`
    Good: `right: Rinse it`
    Source: Haladyna, Downing and Rodriguez, A review of multiple-choice item-writing guidelines,
    2002, guideline 23.
    """
    words = checked.item_words
    for read in checked.items:
        if len(read.options) < 3:
            continue
        for what, marks in (
            ("begins", [_beginning(each) for each in read.options]),
            ("begins", [_doing(each, words) for each in read.options]),
            ("ends", [each.text[-1:] in ".!?" for each in read.options]),
        ):
            odd = _odd_one(marks)
            if odd is not None:
                yield _finding(read, read.options[odd], what)


def _finding(read: ReadItem, option: ReadOption, what: str) -> Finding:
    said = f"“{option.text}” of {read.name} {what} otherwise than all other options"
    return Finding(option.option.place, said, "Build them alike.", (read.item.place,))


def _odd_one(marks: Sequence[object]) -> int | None:
    alike = set(marks)
    if len(alike) != 2:
        return None
    return next((n for n, mark in enumerate(marks) if marks.count(mark) == 1), None)


def _beginning(option: ReadOption) -> object:
    return not option.text[:1].islower()


def _doing(option: ReadOption, words: ItemWords | None) -> object:
    if words is None or not option.words:
        return False
    return option.words[0].endswith(words.doing) and option.words[0] not in words.not_doing
