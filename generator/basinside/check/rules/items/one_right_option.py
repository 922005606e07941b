"""The rule one-right-option."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.item_texts import ReadItem
from basinside.check.number_bounds import number_bounds
from basinside.check.rule import Finding, rule
from basinside.model.quiz import Item
from basinside.problem import Level, Place


@rule(level=Level.STOP)
def check_one_right_option(checked: Checked) -> Iterator[Finding]:
    """What is right can be told from what is wrong, in an item of every kind.

    A choice has exactly one right option; a multiple has at least one right and one wrong. Each
    option is either `right` or `wrong`. In an order no two entries read the same. A number
    accepts the right one and no mistake that the item names. In a
    match no left side stands twice, and what fits none is no right side of another.
    Why: with none or two right options nobody can mark a choice fairly, and without a wrong one
    everybody passes.
    Bad: `kind: choice` with two options that begin with `right:`.
    Good: one option begins with `right:`, each other with `wrong:`.
    Source: Haladyna, Downing and Rodriguez, A review of multiple-choice item-writing guidelines,
    2002.
    """
    for read in checked.items:
        if not read.clear:
            yield from _unclear(read.item)
        elif read.options and not _is_answerable(read):
            yield from _counted(read.item)
        if read.options_only:
            continue
        item = read.item
        if item.entries:
            yield from _twice(item, "entry", [(each.text, each.place) for each in item.entries])
        if item.pairs or item.extra:
            yield from _twice(item, "left side", [(each.left, each.place) for each in item.pairs])
            yield from _matched(item)
        if item.number is not None:
            for said in number_bounds(checked, item.number):
                if not said.of_value:
                    text = f"in {item.item} {said.text}"
                    yield Finding(said.place, text, said.hint, (item.place,))


def _is_answerable(read: ReadItem) -> bool:
    right = len(read.right)
    return 0 < right < len(read.options) and (right == 1 or read.kind != "choice")


def _unclear(item: Item) -> Iterator[Finding]:
    for option in item.options:
        given = (option.right is not None) + (option.wrong is not None)
        if given != 1:
            says = "says both “right” and “wrong”" if given else "is neither right nor wrong"
            yield Finding(option.place, f"an option of {item.item} {says}", also=(item.place,))


def _twice(item: Item, what: str, texts: list[tuple[str, Place]]) -> Iterator[Finding]:
    seen: set[str] = set()
    for text, place in texts:
        flat = _flat(text)
        if flat in seen:
            said = f"a second {what} of {item.item} reads “{text}”"
            yield Finding(place, said, "Nobody can tell them apart.", (item.place,))
        seen.add(flat)


def _matched(item: Item) -> Iterator[Finding]:
    rights = {_flat(pair.right) for pair in item.pairs}
    extra = {_flat(each) for each in item.extra}
    for n, text in enumerate(item.extra):
        if _flat(text) in rights:
            said = f"“{text}” is said to fit none in {item.item}, and is a right side as well"
            yield Finding(item.place.at("extra", n), said, "Delete it there.", (item.place,))
    if item.pairs and len(rights | extra) < 2:
        said = f"{item.item} has one right side, so there is nothing to match"
        yield Finding(item.place.at("pairs"), said, "Add another.", (item.place,))


def _flat(text: str) -> str:
    return " ".join(text.split()).casefold()


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
