"""Options that are numbers or ranges of numbers, read so that they can be compared."""

from __future__ import annotations

from fractions import Fraction
from typing import Final, NamedTuple

from basinside.check.item_words import ItemWords
from basinside.quantity import quantity_in

_MOST_WORDS: Final = 8
_MOST_OF_ONE: Final = 6  # as in 1 h 40 min 30 s
_DIGITS: Final = frozenset("0123456789")


class Numbers(NamedTuple):
    """The numbers that an option says: from where to where, of which kind.

    ``low`` or ``high`` is None where there is no end; ``without_low`` and ``without_high`` tell
    that the end itself is left out. A single number is both ends.
    """

    kind: str
    low: Fraction | None
    high: Fraction | None
    without_low: bool = False
    without_high: bool = False

    @property
    def single(self) -> bool:
        """Whether it is one number."""
        return self.low is not None and self.low == self.high

    def meets(self, other: Numbers) -> bool:
        """Return whether a number can be in both."""
        return self.kind == other.kind and _reaches(self, other) and _reaches(other, self)


def numbers_in(text: str, words: ItemWords | None) -> Numbers | None:
    """Return the number or range that a text is, or None when it is anything else."""
    if _DIGITS.isdisjoint(text) or text.count(" ") >= _MOST_WORDS:
        return None
    flat = text.strip().rstrip(".")
    if flat[:1] in _DIGITS and flat.count(" ") < _MOST_OF_ONE:
        plain = _amount(flat)
        if plain:
            return Numbers(plain[0], plain[1], plain[1])
    if words is None:
        return None
    small = flat.lower()  # units keep their capitals
    for said, sign in words.ranges.items():
        if small.startswith(said):
            return _ranged(_amount(flat[len(said) :].strip()), sign)
    for said, sign in words.after_ranges.items():
        if small.endswith(said):
            return _ranged(_amount(flat[: -len(said)].strip()), sign)
    parts = words.to.split(flat)
    if len(parts) == 2:
        return _between(*parts)
    return None


def _reaches(one: Numbers, other: Numbers) -> bool:
    """Return whether the upper end of one is not below the lower end of the other."""
    if one.high is None or other.low is None:
        return True
    if one.high == other.low:
        return not one.without_high and not other.without_low
    return one.high > other.low


def _amount(text: str) -> tuple[str, Fraction] | None:
    if not text or text[0] not in _DIGITS:
        return None
    if _DIGITS.issuperset(text):
        return "", Fraction(text)
    quantity = quantity_in(text)
    return (str(quantity.kind), quantity.base) if quantity else None


def _ranged(found: tuple[str, Fraction] | None, sign: str) -> Numbers | None:
    if found is None:
        return None
    kind, number = found
    if sign.startswith("<"):
        return Numbers(kind, None, number, without_high=sign == "<")
    return Numbers(kind, number, None, without_low=sign == ">")


def _between(first: str, second: str) -> Numbers | None:
    high = _amount(second)
    if high is None:
        return None
    low = _amount(first)
    if low is None or (low[0] != high[0] and not low[0]):
        unit = second.lstrip("0123456789.,").strip()
        low = _amount(f"{first} {unit}")
    if low is None or low[0] != high[0] or low[1] > high[1]:
        return None
    return Numbers(high[0], low[1], high[1])
