"""The rule options-three-to-five."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.item_texts import ReadItem
from basinside.check.item_words import ItemWords
from basinside.check.rule import Finding, rule
from basinside.problem import Level

_FEWEST: Final = 3
_MOST: Final = 5


@rule(level=Level.WARN)
def check_options_three_to_five(checked: Checked) -> Iterator[Finding]:
    """An item has three to five options; two only when they are true and false.

    Why: of two options half of all guesses are right. A sixth is read by everybody and chosen by
    nobody. Three good ones measure as well as four or five.
    Bad: one option that is right and one that is wrong.
    Good: a second wrong option that people really believe.
    Source: Haladyna, Downing and Rodriguez, A review of multiple-choice item-writing guidelines,
    2002, guideline 18; Rodriguez, Three options are optimal for multiple-choice items, 2005.
    """
    for read in checked.items:
        number = len(read.options)
        if not number or _FEWEST <= number <= _MOST:
            continue
        if number == 2 and _is_true_or_false(read, checked.item_words):
            continue
        if number < _FEWEST:
            mend = "Add what people really do or believe instead."
        else:
            mend = "Delete what nobody would choose."
        yield Finding(
            read.item.place.at("options"),
            f"{read.name} has {number} option{'' if number == 1 else 's'}; it needs three to five",
            mend,
            (read.item.place,),
        )


def _is_true_or_false(read: ReadItem, words: ItemWords | None) -> bool:
    if words is None:
        return False
    first = [each.words[0] for each in read.options if each.words]
    return bool(set(first) & words.truths and set(first) & words.falsehoods)
