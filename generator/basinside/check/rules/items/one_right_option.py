"""The rule one-right-option."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.model.quiz import Item
from basinside.problem import Level


@rule(level=Level.STOP)
def check_one_right_option(checked: Checked) -> Iterator[Finding]:
    """A choice has exactly one right option; a multiple has at least one right and one wrong.

    Why: with none or two right options nobody can mark a choice fairly, and without a wrong one
    everybody passes. Each option is either `right` or `wrong`.
    Bad: `kind: choice` with two options that begin with `right:`.
    Good: one option begins with `right:`, each other with `wrong:`.
    Source: Haladyna, Downing and Rodriguez, A review of multiple-choice item-writing guidelines,
    2002.
    """
    for asked in checked.content.items():
        item = asked.item
        clear = True
        for option in item.options:
            given = (option.right is not None) + (option.wrong is not None)
            if given != 1:
                clear = False
                says = "says both “right” and “wrong”" if given else "is neither right nor wrong"
                yield Finding(option.place, f"an option of {item.item} {says}", also=(item.place,))
        if clear:
            yield from _counted(item)


def _counted(item: Item) -> Iterator[Finding]:
    right = sum(option.is_right for option in item.options)
    wrong = len(item.options) - right
    place = item.place.at("options")
    if item.kind == "choice" and right != 1:
        yield Finding(
            place,
            f"{right} options of {item.item} are right",
            "Mark exactly one, or write “kind: multiple”.",
            (item.place,),
        )
    elif not right:
        yield Finding(place, f"no option of {item.item} is right", "Mark one.", (item.place,))
    elif not wrong:
        yield Finding(place, f"no option of {item.item} is wrong", "Add one.", (item.place,))
