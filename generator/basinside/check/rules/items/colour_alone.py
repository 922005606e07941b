"""The rule colour-alone."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.WARN)
def check_colour_alone(checked: Checked) -> Iterator[Finding]:
    """Nothing in an item is told apart by its colour alone.

    Why: one man in twelve does not tell red from green, and a photocopy has neither.
    Bad: `stem: What does the red line on the drawing show?`
    Good: `stem: What does the dashed line on the drawing show?`
    Source: W3C, Web Content Accessibility Guidelines 2.2, 1.4.1.
    """
    words = checked.item_words
    if words is None:
        return
    for read in checked.items:
        if words.colours.isdisjoint(read.said):
            continue
        texts = [
            (read.item.place.at("stem"), text)
            for text, said in (
                (read.situation, read.situation_words),
                (read.stem, read.stem_words),
            )
            if not words.colours.isdisjoint(said)
        ]
        texts += [
            (each.option.place, each.text)
            for each in read.options
            if not words.colours.isdisjoint(each.words)
        ]
        for place, text in texts:
            found = words.colour_alone.search(text)
            if found:
                yield Finding(
                    place,
                    f"{read.name} tells something by its colour alone: “{found[0]}”",
                    "Name its shape, its place or its word too.",
                    (read.item.place,),
                )
