"""What is wrong with the numbers that a numeric item accepts, for the rules about items."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from basinside.check.checked import Checked
from basinside.check.saying import amount
from basinside.model.item_kinds import Mistake, NumberAsked, NumberFrom, amount_of
from basinside.problem import Place
from basinside.quantity import Quantity


class Said(NamedTuple):
    """Where, what and the mend; ``of_value`` when it is wrong because of a value kept elsewhere."""

    place: Place
    text: str
    hint: str
    of_value: bool


def number_bounds(checked: Checked, number: NumberAsked) -> Iterator[Said]:
    """Yield what is wrong with a number: an end that leaves the right one out.

    A value that is missing is told by the loader, and nothing is said of it here.
    """
    right = amount_of(number.right, checked.content.figures)
    if right is None:
        return
    name, of_value = _named(checked, number.right, right), isinstance(number.right, NumberFrom)
    accept = number.accept
    for key, end, side in (
        ("from", accept.from_ if accept else None, "below"),
        ("to", accept.to if accept else None, "above"),
    ):
        if accept is None or end is None:
            continue
        place = accept.place.at(key)
        if end.kind is not right.kind:
            said = f"“{key}: {amount(end)}” is {end.kind}, which cannot be compared with {name}"
            yield Said(place, said, f"Write a unit of {right.kind}.", of_value)
        elif (end > right) if side == "below" else (end < right):
            said = f"“{key}: {amount(end)}” leaves out the right number, {name}"
            hint = "Read the item again, then write what is accepted anew."
            yield Said(place, said, hint, of_value)
    bounds = number.bounds(checked.content.figures)
    if bounds is None:
        return
    for mistake in number.mistakes:
        yield from _mistake(checked, mistake, *bounds, of_value=of_value)


def _mistake(
    checked: Checked,
    mistake: Mistake,
    low: Quantity,
    right: Quantity,
    high: Quantity,
    *,
    of_value: bool,
) -> Iterator[Said]:
    found = amount_of(mistake.number, checked.content.figures)
    if found is None:
        return
    place = mistake.place.at("number")
    of_value = of_value or isinstance(mistake.number, NumberFrom)
    if found.kind is not right.kind:
        said = f"the mistake {amount(found)} is {found.kind}, the right number is {right.kind}"
        yield Said(place, said, f"Write a unit of {right.kind}.", of_value)
    elif low <= found <= high:
        said = f"the mistake {amount(found)} is accepted as right"
        yield Said(place, said, "Read the item again: one of the two is wrong.", of_value)


def _named(checked: Checked, written: Quantity | NumberFrom, right: Quantity) -> str:
    if not isinstance(written, NumberFrom):
        return amount(right)
    figure = checked.content.figures[written.figure]
    times = f" times {written.times}" if written.times != 1 else ""
    return f"{amount(right)} by {written.figure}{times} ({checked.cited(figure.source)})"
