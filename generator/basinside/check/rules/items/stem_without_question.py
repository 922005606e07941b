"""The rule stem-without-question."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level

_FEWEST: Final = 5
_ENDS: Final = ("?", ":", "…", "_")


@rule(level=Level.WARN)
def check_stem_without_question(checked: Checked) -> Iterator[Finding]:
    """The question stands in the stem: five words or more, and a question mark or a colon.

    A stem may also end with a blank to be filled. Where not one of several options is chosen it may
    say what to do.
    Why: who has to read all options to find out what is asked answers by their looks.
    Bad: `stem: The bath`
    Good: `stem: When is the time in the bath over?`
    Source: Haladyna, Downing and Rodriguez, A review of multiple-choice item-writing guidelines,
    2002, guidelines 14 and 15.
    """
    for read in checked.items:
        few = len(read.stem_words) < _FEWEST
        ends = read.stem.endswith(_ENDS) or (read.kind != "choice" and read.stem.endswith("."))
        if few or not ends:
            said = f"has {len(read.stem_words)} words" if few else "asks nothing"
            yield Finding(
                read.item.place.at("stem"),
                f"the stem of {read.name}, “{read.stem}”, {said}",
                "Write the whole question there.",
                (read.item.place,),
            )
