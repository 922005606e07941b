"""The rule key-echoes-stem."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.item_texts import ReadItem
from basinside.check.item_words import ItemWords
from basinside.check.rule import Finding, rule
from basinside.problem import Level

_LETTERS: Final = 5
_KEPT: Final = 4


@rule(level=Level.WARN)
def check_key_echoes_stem(checked: Checked) -> Iterator[Finding]:
    """No word of the question comes back in the right option alone.

    Words of five letters and more count, whatever their ending; small words do not.
    Why: who knows nothing takes the option that sounds like the question.
    Bad: `stem: How is the valve body brushed?` with `right: Brush it under water`
    Good: the word stands in a wrong option as well, or in none.
    Source: Haladyna, Downing and Rodriguez, A review of multiple-choice item-writing guidelines,
    2002, guideline 28b.
    """
    words = checked.item_words
    if words is None:
        return
    for read in checked.items:
        if not read.right or not read.wrong:
            continue
        echoed = _echoed(read, words)
        if echoed:
            place = read.right[0].option.place
            said = f"“{echoed}” of the question comes back in the right option of {read.name} alone"
            yield Finding(place, said, "Use another word in one of them.", (read.item.place,))


def _echoed(read: ReadItem, words: ItemWords) -> str:
    asked = [word for word in read.stem_words if len(word) >= _LETTERS and word not in words.empty]
    if not asked:
        return ""
    begins = {word[:_KEPT] for word in asked}
    right = [word for each in read.right for word in each.words if word[:_KEPT] in begins]
    if not right:
        return ""
    wrong = {_bare(word, words) for each in read.wrong for word in each.words}
    bare = {_bare(word, words) for word in right} - wrong
    return next((word for word in asked if _bare(word, words) in bare), "")


def _bare(word: str, words: ItemWords) -> str:
    """Return a word without its ending."""
    for ending in words.endings:
        if word.endswith(ending) and len(word) >= _KEPT + len(ending):
            return word.removesuffix(ending)
    return word
