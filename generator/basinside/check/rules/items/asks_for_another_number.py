"""The rule asks-for-another-number."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.STOP)
def check_asks_for_another_number(checked: Checked) -> Iterator[Finding]:
    """A stem that asks for two options has two right ones.

    Why: whoever ticks as many as are asked for would fail.
    Bad: `stem: Choose two signs that the pack is spoiled.` with three that are right.
    Good: say the number that it is, or none.
    Source: common practice.
    """
    words = checked.item_words
    if words is None:
        return
    for read in checked.items:
        if read.kind != "multiple":
            continue
        found = words.asks_for.search(read.stem)
        if found is None:
            continue
        asked = words.counts[found[1].casefold()]
        if asked != len(read.right):
            yield Finding(
                read.item.place.at("stem"),
                f"{read.name} asks for {asked} options and has {len(read.right)} that are right",
                "Write the number that it is, or none.",
                (read.item.place,),
            )
