"""The rule negative-unmarked."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.item_texts import ReadItem
from basinside.check.item_words import ItemWords
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.WARN)
def check_negative_unmarked(checked: Checked) -> Iterator[Finding]:
    """A question that asks for what is not so says it loudly: `negative: yes`, NOT in capitals.

    The last sentence of the stem counts.
    Why: in a hurry “not” is read over, and who knows the answer chooses the opposite. What to do
    is better asked than what not to do.
    Bad: `stem: Which of these is not washed by hand?`
    Good: `stem: Which of these goes into the machine?`; or `negative: yes` and “Which is NOT ...”.
    Source: Haladyna, Downing and Rodriguez, A review of multiple-choice item-writing guidelines,
    2002, guideline 17.
    """
    words = checked.item_words
    if words is None:
        return
    for read in checked.items:
        found = _negatives(read, words)
        if not read.item.negative and found:
            yield Finding(
                read.item.place.at("stem"),
                f"{read.name} asks with “{found[0]}”",
                "Ask for what is so; or write “negative: yes” and the word in capitals.",
                (read.item.place,),
            )
        elif read.item.negative and not found:
            yield Finding(
                read.item.place.at("negative"),
                f"{read.name} is marked negative and asks nothing negative",
                "Delete “negative”.",
                (read.item.place,),
            )
        elif read.item.negative and not any(each.upper() in read.question for each in found):
            yield Finding(
                read.item.place.at("stem"),
                f"the “{found[0]}” of {read.name} does not stand out",
                f"Write {found[0].upper()}.",
                (read.item.place,),
            )


def _negatives(read: ReadItem, words: ItemWords) -> list[str]:
    if words.negatives.isdisjoint(read.said):
        return []
    return [each for each in read.question_words if each in words.negatives]
