"""The rule true-too-often."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.item_texts import ReadItem
from basinside.check.rule import Finding, rule
from basinside.problem import Level

_FEWEST: Final = 10
_LEAST, _MOST = 40, 60


@rule(level=Level.INFO)
def check_true_too_often(checked: Checked) -> Iterator[Finding]:
    """Of items that are true or false, between 40 % and 60 % are true.

    Asked from ten such items on, over both pools.
    Why: who does not know says “true”, and would be right more often than not.
    Bad: nine of ten items are true.
    Good: five of ten.
    Source: common practice.
    """
    words = checked.item_words
    if words is None:
        return
    found: list[ReadItem] = []
    for read in checked.items:
        if len(read.options) != 2 or len(read.right) != 1:
            continue
        first = {each.words[0] for each in read.options if each.words}
        if first & words.truths and first & words.falsehoods:
            found.append(read)
    if len(found) < _FEWEST:
        return
    true = [read for read in found if read.right[0].words[0] in words.truths]
    percent = round(100 * len(true) / len(found))
    if not _LEAST <= percent <= _MOST:
        worst = (true or found)[0]
        yield Finding(
            worst.item.place.at("options"),
            f"{len(true)} of {len(found)} items that are true or false are true ({percent} %)",
            "Turn some of them round.",
            (worst.item.place,),
        )
