"""The rule item-cues-another."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from typing import Final

from basinside.check.checked import Checked
from basinside.check.item_texts import ReadItem, holds_run
from basinside.check.rule import Finding, rule
from basinside.problem import Level

_FEWEST: Final = 5
"""Words of a key; fewer say nothing that others do not say too (our own floor)."""


@rule(level=Level.WARN)
def check_item_cues_another(checked: Checked) -> Iterator[Finding]:
    """No item says the right option of another in its stem or situation.

    Looked at within each pool, among right options of five words and more.
    Why: both can come in one form, where the first answers the second.
    Bad: `stem: The pack was set aside and shown to the lead. Why?` beside another item with
    `right: Set aside and shown to the lead`
    Good: say it in other words.
    Source: Haladyna, Downing and Rodriguez, A review of multiple-choice item-writing guidelines,
    2002, guideline 4.
    """
    keys: dict[tuple[str, str, str], dict[tuple[str, ...], list[ReadItem]]] = {}
    for read in checked.items:
        if len(read.right) == 1 and len(read.right[0].words) >= _FEWEST:
            run = read.right[0].words
            same = keys.setdefault((read.pool, run[0], run[1]), {}).setdefault(run, [])
            if len(same) < 2:
                same.append(read)
    if not keys:
        return
    firsts = frozenset(first for _, first, _ in keys)
    for read in checked.items:
        told = read.stem_words
        if firsts.isdisjoint(told) and firsts.isdisjoint(read.situation_words):
            continue
        if read.item.situation or not read.scenario:
            told = (*read.situation_words, *told)
        for first, second in pairwise(told):
            if first not in firsts:
                continue
            for run, holders in keys.get((read.pool, first, second), {}).items():
                other = next((each for each in holders if each is not read), None)
                if other is not None and holds_run(told, run):
                    yield Finding(
                        read.item.place.at("stem"),
                        f"{read.name} says what is right in {other.name}: “{other.right[0].text}”",
                        "Say it in other words here.",
                        (read.item.place, other.item.place),
                    )
