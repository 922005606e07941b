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
        options = read.options
        number = len(options)
        if number < 3:
            continue
        for what, marks in (
            ("begins", [each.text[:1].islower() for each in options]),
            ("begins", [_is_doing(each.words, words) for each in options] if words else []),
            ("ends", [each.text.endswith(_STOPS) for each in options]),
        ):
            marked = sum(marks)
            if marked == 1:
                yield _finding(read, options[marks.index(True)], what)
            elif marked == number - 1:
                yield _finding(read, options[marks.index(False)], what)


def _finding(read: ReadItem, option: ReadOption, what: str) -> Finding:
    said = f"“{option.text}” of {read.name} {what} otherwise than all other options"
    return Finding(option.option.place, said, "Build them alike.", (read.item.place,))


def _is_doing(said: tuple[str, ...], words: ItemWords) -> bool:
    return bool(said) and said[0].endswith(words.doing) and said[0] not in words.not_doing
