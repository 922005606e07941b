"""The rule unsafe-option-rewarded."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.STOP)
def check_unsafe_option_rewarded(checked: Checked) -> Iterator[Finding]:
    """What is marked unsafe is wrong: no right option and no right pair is.

    Why: an unsafe option fails an item whatever else is chosen, so that nobody could pass it; or
    somebody would get points for what hurts people.
    Bad: `right: Lift the lid at once` with `unsafe: yes`
    Good: `wrong: Lift the lid at once` with `unsafe: yes`
    Source: Yudkowsky, Tumuluru, Casey, Herlich and Ledonne, A patient safety approach to setting
    pass/fail standards for basic procedural skills checklists, 2014.
    """
    for read in checked.items:
        for each in read.right:
            if each.option.unsafe:
                yield Finding(
                    each.option.place.at("unsafe"),
                    f"“{each.text}” is right in {read.name}, and marked unsafe",
                    "Delete one of the two.",
                    (read.item.place,),
                )
        if read.options_only or not read.item.pairs:
            continue
        item = read.item
        rights: dict[str, set[str]] = {}
        for pair in item.pairs:
            rights.setdefault(pair.left.casefold(), set()).add(pair.right)
        for pair in item.pairs:
            for mistake in pair.mistakes:
                if mistake.unsafe and mistake.right in rights[pair.left.casefold()]:
                    yield Finding(
                        mistake.place.at("unsafe"),
                        f"“{mistake.right}” for “{pair.left}” is right in {read.name}, and marked"
                        " unsafe",
                        "Delete one of the two.",
                        (item.place,),
                    )
