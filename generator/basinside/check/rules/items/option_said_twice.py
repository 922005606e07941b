"""The rule option-said-twice."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.item_texts import words_of
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.STOP)
def check_option_said_twice(checked: Checked) -> Iterator[Finding]:
    """No two options of an item say the same.

    Options are compared as they are shown, with values filled in; capitals, points and kinds of
    spaces do not count.
    Why: of two options that say the same both are right or both are wrong, and a choice has only
    one that is right. Two options can come to say the same when a value changes.
    Bad: `wrong: Above 40 °C` and `wrong: "Above {{ detergent.warmest }}"` while that is 40 °C.
    Good: each option says something that no other says.
    Source: Haladyna, Downing and Rodriguez, A review of multiple-choice item-writing guidelines,
    2002, guideline 3.
    """
    for read in checked.items:
        if len({each.words for each in read.options}) == len(read.options):
            continue
        seen: dict[tuple[str, ...], str] = {}
        for each in read.options:
            flat = words_of(unicodedata.normalize("NFKC", each.text))
            if flat in seen:
                said = f"two options of {read.name} say the same: “{seen[flat]}” and “{each.text}”"
                mend = "Let one of them say something else."
                yield Finding(each.option.place, said, mend, (read.item.place,))
            seen.setdefault(flat, each.text)
