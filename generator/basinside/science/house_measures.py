"""An amount of product in the measures that a house owns: jug, syringe, spoon.

A measure is filled to the brim, or, where it has marks, once up to one of them: coarse marks are
read first, down to the mark below what is missing, and the last reading is up to the mark above.
Beside full ones of the largest measure, an amount is put together in at most four such steps:
whoever counts more small ones loses count. Of all these ways the one that comes nearest from above
is taken, so that there is never too little product.

Source: common practice; nothing published says how many spoonfuls are too many.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import combinations, combinations_with_replacement
from math import ceil
from typing import TypeAlias

from basinside.science.bounds import Number, above_nought

MOST_SMALL_STEPS = 4
"""Steps of measuring beside full ones of the largest measure (common practice)."""


@dataclass(frozen=True, kw_only=True)
class Measure:
    """A measure of the house.

    `holds` and `marks` are in the unit of the amount that is asked for: mL for a liquid, g for a
    powder (a level spoon of it, weighed once). `marks` is the distance between two marks; a
    measure without marks is only ever used full.
    """

    name: str
    holds: Number
    marks: Number | None = None

    def __post_init__(self) -> None:
        """Refuse a measure that holds nothing, or whose first mark is above its brim."""
        holds = above_nought("holds", self.holds)
        if self.marks is not None and above_nought("marks", self.marks) > holds:
            raise ValueError(f"marks must not be above holds, {self.holds}, not {self.marks}")


@dataclass(frozen=True, kw_only=True)
class Pour:
    """One measure, how far it is filled, and how often: in the unit of the amount."""

    measure: str
    amount: float
    times: int


@dataclass(frozen=True, kw_only=True)
class Measured:
    """How an amount is measured out, largest pour first, and how much it truly is.

    `moves` counts the pours. A caller tells the true strength beside it, and says so where many
    moves or far too much product show that the house lacks a fitting measure.
    """

    amounts: tuple[Pour, ...]
    true_amount: float
    moves: int


# One way: (a measure's place in the list, how far it is filled) -> how often.
_Way: TypeAlias = dict[tuple[int, Fraction], int]


def in_house_measures(amount: Number, measures: Iterable[Measure | Number]) -> Measured:
    """Put an amount of product together from the measures of the house, never too little.

    Of all ways with at most four steps beside full ones of the largest measure, the one with the
    least product too much wins; of equals the one with the fewest pours, then the one with the
    fewest full small measures, then the one that is listed first.

    Parameters
    ----------
    amount:
        Product that is asked for, above 0, in mL or in g.
    measures:
        What the house owns, in the same unit, at least one. A bare number is a measure that
        holds so much and has no marks.

    Returns
    -------
    Measured
        The pours and the true amount, which is the amount or more.

    Raises
    ------
    ValueError
        When the amount is not above 0 or there is no measure.

    Examples
    --------
    >>> found = in_house_measures(142.9, [Measure(name="jug", holds=1000, marks=50)])
    >>> found.true_amount
    150.0
    """
    wanted = above_nought("amount", amount)
    house = tuple(
        each if isinstance(each, Measure) else Measure(name=str(each), holds=each)
        for each in measures
    )
    if not house:
        raise ValueError("measures must name at least one measure")
    sizes = tuple(above_nought("holds", each.holds) for each in house)
    marks = tuple(
        None if each.marks is None else above_nought("marks", each.marks) for each in house
    )
    way = min(_ways(wanted, sizes, marks), key=lambda way: (_total(way), sum(way.values())))
    pours = sorted(way.items(), key=lambda pour: (-pour[0][1], pour[0][0]))
    return Measured(
        amounts=tuple(
            Pour(measure=house[at].name, amount=float(filled), times=times)
            for (at, filled), times in pours
        ),
        true_amount=float(_total(way)),
        moves=sum(way.values()),
    )


def _ways(
    wanted: Fraction, sizes: tuple[Fraction, ...], marks: tuple[Fraction | None, ...]
) -> Iterator[_Way]:
    """Yield every way that is not too little, those with the fewest small steps first."""
    largest = max(range(len(sizes)), key=lambda at: sizes[at])
    smaller = [at for at in range(len(sizes)) if at != largest]
    for steps in range(MOST_SMALL_STEPS + 1):
        for chosen in combinations_with_replacement(smaller, steps):
            way: _Way = {}
            for at in chosen:
                _pour(way, at, sizes[at])
            rest = max(wanted - _total(way), Fraction(0))
            full, missing = divmod(rest, sizes[largest])
            _pour(way, largest, sizes[largest], int(full))
            if not missing:
                yield way
                continue
            yield _with(way, {(largest, sizes[largest]): 1})
            for read in _readings(missing, sizes, marks, MOST_SMALL_STEPS - steps):
                yield _with(way, read)


def _readings(
    missing: Fraction, sizes: tuple[Fraction, ...], marks: tuple[Fraction | None, ...], most: int
) -> Iterator[_Way]:
    """Yield what is read at marks, coarse marks first: down to a mark, and the last one up."""
    marked = [(mark, at) for at, mark in enumerate(marks) if mark is not None]
    marked.sort(key=lambda each: (-each[0], each[1]))
    for steps in range(1, most + 1):
        for chosen in combinations(marked, steps):
            way: _Way = {}
            left = missing
            for mark, at in chosen[:-1]:
                down = min(left, sizes[at]) // mark * mark
                _pour(way, at, Fraction(down), 1 if down else 0)
                left -= down
            mark, at = chosen[-1]
            if left <= sizes[at]:
                _pour(way, at, min(ceil(left / mark) * mark, sizes[at]), 1 if left else 0)
                yield way


def _pour(way: _Way, at: int, filled: Fraction, times: int = 1) -> None:
    if times:
        way[at, filled] = way.get((at, filled), 0) + times


def _with(way: _Way, more: _Way) -> _Way:
    both = dict(way)
    for (at, filled), times in more.items():
        _pour(both, at, filled, times)
    return both


def _total(way: _Way) -> Fraction:
    return sum((filled * times for (_, filled), times in way.items()), Fraction(0))
