"""The rule asks-for-opinion."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.INFO)
def check_asks_for_opinion(checked: Checked) -> Iterator[Finding]:
    """A stem asks what is so or what to do, not what somebody thinks or likes.

    Why: an opinion cannot be wrong, and a joke in an item costs those who read slowly.
    Bad: `stem: What do you think is the best way to dry a bulb?`
    Good: `stem: How is a bulb dried?`
    Source: Haladyna, Downing and Rodriguez, A review of multiple-choice item-writing guidelines,
    2002, guidelines 6, 7 and 31.
    """
    words = checked.item_words
    if words is None:
        return
    for read in checked.items:
        if words.opinion_with.isdisjoint(read.said):
            continue
        found = words.opinion.search(read.stem)
        if found:
            yield Finding(
                read.item.place.at("stem"),
                f"{read.name} asks for an opinion: “{found[0]}”",
                "Ask what is so, or what to do.",
                (read.item.place,),
            )
