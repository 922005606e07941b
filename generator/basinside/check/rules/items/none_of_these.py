"""The rule none-of-these."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.WARN)
def check_none_of_these(checked: Checked) -> Iterator[Finding]:
    """No option is only “none of these” or “all of these”.

    Why: who chooses “none of these” has shown what is wrong and not what is right, and whoever
    uses an instrument next has to know what is right.
    Bad: `wrong: None of these`
    Good: `wrong: It is put back as it is`
    Source: Haladyna, Downing and Rodriguez, A review of multiple-choice item-writing guidelines,
    2002, guidelines 25 and 26.
    """
    words = checked.item_words
    if words is None:
        return
    for read in checked.items:
        if words.none_of_these_with.isdisjoint(read.said):
            continue
        for each in read.options:
            if words.none_of_these.fullmatch(each.text.rstrip(" .!")):
                yield Finding(
                    each.option.place,
                    f"an option of {read.name} says only “{each.text}”",
                    "Write what is done or believed instead.",
                    (read.item.place,),
                )
