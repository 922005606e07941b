"""What the length of a test and its cut mean for somebody who knows a given share of the field.

The binomial model: each item is drawn anew from a field of which the person masters a share. Source
of the idea: Millman, Passing scores and test lengths for domain-referenced measures, Review of
Educational Research 43 (1973) 205. All counting is exact; a result is rounded once, at the end.
"""

from __future__ import annotations

from fractions import Fraction
from math import comb, log
from typing import Final, NamedTuple

from basinside.statistics.angoff import angoff
from basinside.statistics.share import Written, share

__all__ = [
    "Length",
    "angoff",
    "over_attempts",
    "pass_probability",
    "smallest_test",
    "zero_failure_run",
]

MOST_ITEMS: Final = 2_000
"""Where the search for a test gives up; nobody sits so many items (our own cap)."""


class Length(NamedTuple):
    """How many items a test has, and how many of them must be right."""

    items: int
    cut: int


def pass_probability(items: int, cut: int, proportion: Written) -> float:
    """Return the probability that a person has at least ``cut`` of ``items`` right.

    Args:
        items: how many there are, 0 or more.
        cut: how many must be right.
        proportion: of the whole field that the person masters, 0 to 1.

    Raises:
        ValueError: when there are fewer items than none, or the proportion is no share.

    >>> round(pass_probability(10, 8, 0.7), 6)
    0.382783
    """
    return float(exact_pass(items, cut, share(proportion)))


def exact_pass(items: int, cut: int, proportion: Fraction) -> Fraction:
    """Return `pass_probability` as a fraction."""
    if items < 0:
        raise ValueError(f"a test has no {items} items")
    right, whole = proportion.numerator, proportion.denominator
    wrong = whole - right
    ways = sum(
        comb(items, k) * right**k * wrong ** (items - k) for k in range(max(0, cut), items + 1)
    )
    return Fraction(ways, whole**items)


def over_attempts(chance: Written, attempts: int) -> float:
    """Return the probability that at least one of several attempts is passed.

    Args:
        chance: of passing one, 0 to 1.
        attempts: how many are allowed, each with other items; 0 or more.

    Raises:
        ValueError: when the chance is no share, or the attempts are fewer than none.

    >>> over_attempts(0.5, 3)
    0.875
    """
    if attempts < 0:
        raise ValueError(f"nobody has {attempts} attempts")
    return float(1 - (1 - share(chance)) ** attempts)


def smallest_test(
    non_master: Written,
    master: Written,
    false_pass: Written,
    false_fail: Written,
    most: int = MOST_ITEMS,
) -> Length:
    """Return the shortest test that keeps both mistakes rare, and the lowest cut that does.

    Args:
        non_master: the proportion mastered by somebody who must not pass.
        master: the proportion mastered by somebody who must pass.
        false_pass: how often the first may pass at most.
        false_fail: how often the second may fail at most.
        most: how many items to look at.

    Raises:
        ValueError: when the master masters no more than the other, or no test of at most ``most``
            items will do.

    >>> smallest_test(0.70, 0.90, 0.10, 0.10)
    Length(items=25, cut=21)
    """
    low, high = _Tail(share(non_master)), _Tail(share(master))
    if low.proportion >= high.proportion:
        raise ValueError("who must pass has to master more than who must not")
    pass_at_most, fail_at_most = share(false_pass), share(false_fail)
    for items in range(1, most + 1):
        low.lengthen()
        high.lengthen()
        while low.cut <= items and low.passes() > pass_at_most:
            low.raise_cut()
            high.raise_cut()
        if low.cut <= items and 1 - high.passes() <= fail_at_most:
            return Length(items, low.cut)
    raise ValueError(f"no test of at most {most} items keeps both mistakes so rare")


def zero_failure_run(proportion: Written, confidence: Written) -> int:
    """Return how many in a row must go right to say that at least a proportion do.

    Args:
        proportion: of all that go right, to be shown, above 0 and below 1.
        confidence: of saying so, 0 or more and below 1.

    Raises:
        ValueError: when no run can show it.

    >>> zero_failure_run(0.90, 0.95)
    29
    """
    each, doubt = share(proportion), 1 - share(confidence)
    if each in (0, 1) or doubt == 0:
        raise ValueError("no run, however long, shows this for certain")
    run = max(0, round(log(doubt) / log(each)))
    while each**run > doubt:
        run += 1
    while run and each ** (run - 1) <= doubt:
        run -= 1
    return run


class _Tail:
    """The probability of at least ``cut`` right, kept while a test grows and its cut rises.

    Counted in units of 1 / whole ** items, so that nothing is ever rounded.
    """

    def __init__(self, proportion: Fraction) -> None:
        self.proportion = proportion
        self.items = self.cut = 0
        self._right, self._whole = proportion.numerator, proportion.denominator
        self._ways = 1

    def _exactly(self, right: int) -> int:
        """Return the ways to have so many right."""
        if not 0 <= right <= self.items:
            return 0
        wrong = self.items - right
        part: int = self._right**right * (self._whole - self._right) ** wrong
        return comb(self.items, right) * part

    def lengthen(self) -> None:
        """Add an item: whoever lacked one to the cut has it when this one is right."""
        self._ways = self._whole * self._ways + self._right * self._exactly(self.cut - 1)
        self.items += 1

    def raise_cut(self) -> None:
        """Ask for one more."""
        self._ways -= self._exactly(self.cut)
        self.cut += 1

    def passes(self) -> Fraction:
        """Return the probability."""
        return Fraction(self._ways, self._whole**self.items)
