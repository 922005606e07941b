"""The rule belief-not-named."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.WARN)
def check_belief_not_named(checked: Checked) -> Iterator[Finding]:
    """Each wrong option names the belief that leads to it, and no right one does.

    Why: a wrong option that nobody believes is chosen by nobody, and what a ward believes is what
    the next lesson is about. A right option with a belief behind it was once a wrong one: its mark
    was changed and nothing else.
    Bad: `wrong: Lift the lid at once`, and nothing that it shows; `right:` with `shows:`.
    Good: `wrong: Lift the lid at once` with `shows: takes silence for no pressure`.
    Source: Haladyna, Downing and Rodriguez, A review of multiple-choice item-writing guidelines,
    2002, guideline 29 (common errors as distractors).
    """
    for read in checked.items:
        for each in read.options:
            if each.is_right == (each.shows is None):
                continue
            said = (
                f"“{each.text}” of {read.name} is right, and says which wrong belief it shows"
                if each.is_right
                else f"“{each.text}” of {read.name} does not say which belief it shows"
            )
            hint = "Is it wrong? Else delete “shows:”." if each.is_right else "Write “shows:”."
            yield Finding(each.option.place, said, hint, (read.item.place,))
