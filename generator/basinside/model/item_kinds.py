"""What an item of each kind is answered with: options, an order, a number, or pairs."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import Annotated, Any, NamedTuple

from pydantic import Discriminator, Field, Tag

from basinside.model.entry import Amount, Count, Entry, FigureRef, Id, Prose, StepPath, Truth
from basinside.model.figure import Figure
from basinside.model.words import UnsafeSide
from basinside.quantity import Quantity
from basinside.units import UNITS


class Option(Entry):
    """One option: right or wrong, why, and for a wrong one the belief behind it."""

    right: Prose | None = None
    wrong: Prose | None = None
    because: Prose | None = None
    shows: Prose | None = None
    unsafe: Truth = False

    @property
    def is_right(self) -> bool:
        """Whether the author marked it right."""
        return self.right is not None

    @property
    def text(self) -> str:
        """What the reader sees."""
        return self.right if self.right is not None else self.wrong or ""


class OrderEntry(Entry):
    """Something to be put in its place; ``step`` is the step of a procedure that it stands for."""

    entry: Id
    text: Prose
    step: StepPath | None = None


class Matter(Entry):
    """Two entries of which one must come before the other, why, and the belief against it."""

    first: Id
    then: Id
    because: Prose | None = None
    shows: Prose | None = None


class NumberFrom(FigureRef):
    """``{figure: chlorine.stock-per-litre, times: 5}``: a number that follows a value."""

    times: Count = 1


def _written_how(value: Any) -> str:
    return "@figure" if isinstance(value, dict | NumberFrom) else "@amount"


AmountOrFigure = Annotated[
    Annotated[Amount, Tag("@amount")] | Annotated[NumberFrom, Tag("@figure")],
    Discriminator(_written_how),
]
"""An amount as it is written, or one that follows a value kept elsewhere."""


class Accept(Entry):
    """From where to where a number counts as right; an end left out is the right number itself."""

    from_: Amount | None = Field(default=None, alias="from")
    to: Amount | None = None


class Mistake(Entry):
    """A number that a named wrong way of working gives, and the belief behind it."""

    number: AmountOrFigure
    because: Prose
    shows: Prose | None = None


class NumberAsked(Entry):
    """The right number, what else is accepted, on which side of it somebody is hurt, and why."""

    right: AmountOrFigure
    accept: Accept | None = None
    exact: Truth = False
    unsafe: UnsafeSide
    because: Prose
    mistakes: tuple[Mistake, ...] = ()

    def bounds(self, figures: Mapping[str, Figure]) -> tuple[Quantity, Quantity, Quantity] | None:
        """Return the least, the right and the greatest number accepted, in the unit asked for.

        None where the value is missing, or an end of what is accepted is of another kind.
        """
        right = amount_of(self.right, figures)
        if right is None:
            return None
        low = high = right
        if self.accept is not None:
            low, high = self.accept.from_ or right, self.accept.to or right
        if low.kind is not right.kind or high.kind is not right.kind:
            return None
        unit = (UNITS[right.unit].steps or (right.unit,))[-1]
        return low.in_unit(unit), right.in_unit(unit), high.in_unit(unit)


class PairMistake(Entry):
    """A right side that somebody may choose wrongly, why it is wrong, and the belief behind it."""

    right: Prose
    because: Prose | None = None
    shows: Prose | None = None
    unsafe: Truth = False


class Pair(Entry):
    """What stands on the left and what belongs to it on the right."""

    left: Prose
    right: Prose
    because: Prose
    mistakes: tuple[PairMistake, ...] = ()


def amount_of(written: Quantity | NumberFrom, figures: Mapping[str, Figure]) -> Quantity | None:
    """Return an amount as it is written or as its value now is; None where the value is missing."""
    if isinstance(written, Quantity):
        return written
    figure = figures.get(written.figure)
    if figure is None:
        return None
    value = figure.value
    return Quantity(number=value.number * Fraction(written.times), unit=value.unit)


class PairKept(NamedTuple):
    """The places of two entries, the first before the other, and what the author says of it."""

    first: int
    then: int
    said: Matter | None


def pairs_that_matter(
    entries: tuple[OrderEntry, ...], matters: tuple[Matter, ...]
) -> tuple[PairKept, ...]:
    """Return which entry must come before which; neighbours where nothing is said."""
    if not matters:
        return tuple(PairKept(n, n + 1, None) for n in range(len(entries) - 1))
    at = {each.entry: n for n, each in enumerate(entries)}
    return tuple(
        PairKept(at[each.first], at[each.then], each)
        for each in matters
        if each.first in at and each.then in at
    )


def right_sides(pairs: tuple[Pair, ...], extra: tuple[str, ...]) -> tuple[str, ...]:
    """Return what can be chosen for each left side: every right side once, then what fits none."""
    return tuple(dict.fromkeys((*(pair.right for pair in pairs), *extra)))
