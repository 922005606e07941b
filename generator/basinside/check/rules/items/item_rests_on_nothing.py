"""The rule item-rests-on-nothing."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.item_texts import ReadItem
from basinside.check.rule import Finding, rule
from basinside.model.item_kinds import NumberFrom
from basinside.problem import Level


@rule(level=Level.STOP)
def check_item_rests_on_nothing(checked: Checked) -> Iterator[Finding]:
    """An item says what its key rests on, and its topic is asked somewhere.

    A key that a person wrote has `rests_on` with the edition in which it was read, and with the
    steps or values it was read against. A number or an order that follows values and steps by
    itself needs none. The topic of an assessment item is in the blueprint of an assessment.
    Why: what a key rests on changes one day, and only `rests_on` tells that the key is to be read
    again. An item of no blueprint is never drawn, and looks as if it were.
    Bad: an item with options and without `rests_on`.
    Good: `rests_on: {read_in: 2026.2, steps: [bag-mask-silicone-boil/wash]}`
    Source: common practice.
    """
    asked = {
        topic for each in checked.content.assessments.values() for topic in each.blueprint.topics
    }
    for read in checked.items:
        if read.rests_on is None and not _follows(read):
            yield Finding(
                read.item.place,
                f"{read.name} does not say what its key rests on",
                "Write “rests_on:” with read_in and the steps or values.",
            )
        if read.pool == "assessment" and asked and read.topic not in asked:
            yield Finding(
                read.item.place,
                f"{read.name} is of the topic {read.topic}, which no assessment asks",
                "Write the topic into a blueprint, or move the item to practice.",
            )


def _follows(read: ReadItem) -> bool:
    number = read.item.number
    if number is not None:
        return isinstance(number.right, NumberFrom)
    return any(each.step for each in read.item.entries)
