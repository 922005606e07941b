"""The rule double-negative."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.STOP)
def check_double_negative(checked: Checked) -> Iterator[Finding]:
    """A question that asks for what is not so has no option that says “not”.

    Why: “Which is not done? Not rinsing.” has to be worked out like a sum, and whoever works it out
    wrongly learns the opposite of what is right.
    Bad: `stem: What must you never leave out?` with `wrong: Not wearing gloves`
    Good: `stem: What must be worn?` with `wrong: Thin gloves`
    Source: Haladyna, Downing and Rodriguez, A review of multiple-choice item-writing guidelines,
    2002, guideline 17.
    """
    words = checked.item_words
    if words is None:
        return
    for read in checked.items:
        if words.negatives.isdisjoint(read.said):
            continue
        if words.negatives.isdisjoint(read.question_words):
            continue
        for each in read.options:
            if not words.negatives.isdisjoint(each.words):
                yield Finding(
                    each.option.place,
                    f"{read.name} asks “{read.question}” and has the option “{each.text}”",
                    "Ask for what is so.",
                    (read.item.place,),
                )
