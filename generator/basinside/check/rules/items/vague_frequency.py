"""The rule vague-frequency."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.item_texts import ReadItem
from basinside.check.item_words import ItemWords
from basinside.check.rule import Finding, rule
from basinside.problem import Level, Place


@rule(level=Level.INFO)
def check_vague_frequency(checked: Checked) -> Iterator[Finding]:
    """Stem and options do without “usually”, “often” and “sometimes”.

    Why: nobody knows how often “often” is, so that an option with it can be defended.
    Bad: `wrong: It often rusts`
    Good: `wrong: It rusts within a week`
    Source: Haladyna, Downing and Rodriguez, A review of multiple-choice item-writing guidelines,
    2002, guideline 28.
    """
    words = checked.item_words
    if words is None:
        return
    for read in checked.items:
        if words.vague.isdisjoint(read.said):
            continue
        if not words.vague.isdisjoint(read.stem_words):
            yield _finding(read, read.item.place.at("stem"), read.stem_words, words)
        for each in read.options:
            if not words.vague.isdisjoint(each.words):
                yield _finding(read, each.option.place, each.words, words)


def _finding(read: ReadItem, place: Place, said: tuple[str, ...], words: ItemWords) -> Finding:
    found = next(word for word in said if word in words.vague)
    mend = "Say how often, or leave it out."
    return Finding(place, f"{read.name} says “{found}”", mend, (read.item.place,))
