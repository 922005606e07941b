"""The rule options-not-parallel."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.item_texts import ReadItem, ReadOption
from basinside.check.item_words import ItemWords
from basinside.check.rule import Finding, rule
from basinside.problem import Level

_STOPS: Final = (".", "!", "?")


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
            ("begins", [each.text[:1].islower() for each in read.options]),
            ("begins", [words is not None and _is_doing(each, words) for each in read.options]),
            ("ends", [each.text.endswith(_STOPS) for each in read.options]),
        ):
            odd = marks.count(not marks[0])  # how many are not as the first one
            if odd == 1:
                yield _finding(read, read.options[marks.index(not marks[0])], what)
            elif odd == len(marks) - 1:
                yield _finding(read, read.options[0], what)


def _finding(read: ReadItem, option: ReadOption, what: str) -> Finding:
    said = f"“{option.text}” of {read.name} {what} otherwise than all other options"
    return Finding(option.option.place, said, "Build them alike.", (read.item.place,))


def _is_doing(option: ReadOption, words: ItemWords) -> bool:
    first = option.words[0] if option.words else ""
    return first.endswith(words.doing) and first not in words.not_doing
