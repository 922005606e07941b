"""The rule blank-in-the-middle."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level

_BLANK: Final = re.compile(r"_{2,}|\.{4,}|…")
_SIGNS: Final = ("__", "....", "…")  # one of them is in every blank


@rule(level=Level.WARN)
def check_blank_in_the_middle(checked: Checked) -> Iterator[Finding]:
    """A blank to be filled stands at the end of the stem.

    Why: with a gap in the middle a reader holds half a sentence in mind, for each option anew.
    Bad: `stem: "The ____ is taken out first, before the cap."`
    Good: `stem: Which part is taken out first?`
    Source: Haladyna, Downing and Rodriguez, A review of multiple-choice item-writing guidelines,
    2002, guideline 15.
    """
    for read in checked.items:
        if not any(sign in read.stem for sign in _SIGNS):
            continue
        found = _BLANK.search(read.stem)
        if found and read.stem[found.end() :].strip(" .?"):
            yield Finding(
                read.item.place.at("stem"),
                f"the blank of {read.name} stands in the middle of its stem",
                "Ask a question, or put the blank last.",
                (read.item.place,),
            )
