"""Values as messages say them."""

from __future__ import annotations

import math
from collections.abc import Iterable

from basinside.quantity import NO_BREAK_SPACE, Quantity


def amount(quantity: Quantity) -> str:
    """Return an amount with its unit, in plain spaces."""
    return quantity.text().replace(NO_BREAK_SPACE, " ")


def rounded_down(value: float) -> str:
    """Return a number with at most one decimal, never more than it is: nothing is made hotter."""
    return f"{math.floor(value * 10) / 10:.1f}".removesuffix(".0")


def listed(words: Iterable[str]) -> str:
    """Return words with commas, the last after “and”; each once, in order."""
    each = list(dict.fromkeys(words))
    return each[0] if len(each) == 1 else f"{', '.join(each[:-1])} and {each[-1]}" if each else ""
