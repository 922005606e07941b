"""Values as messages say them."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from basinside.quantity import NO_BREAK_SPACE, Quantity


def amount(quantity: Quantity) -> str:
    """Return an amount with its unit, in plain spaces."""
    return quantity.text().replace(NO_BREAK_SPACE, " ")


def rounded_down(value: float) -> str:
    """Return a number with one decimal, never more than it is: a vessel is not made hotter."""
    tenths = Fraction(value) * 10 // 1
    return f"{tenths // 10}.{tenths % 10}" if tenths >= 0 else f"-{-tenths // 10}.{-tenths % 10}"


def listed(words: Iterable[str]) -> str:
    """Return words with commas, the last after “and”; each once, in order."""
    each = list(dict.fromkeys(words))
    return each[0] if len(each) == 1 else f"{', '.join(each[:-1])} and {each[-1]}" if each else ""
