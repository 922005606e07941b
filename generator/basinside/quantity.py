"""Amounts with a unit: read from an author's text, compared within a kind, written out again.

Numbers are exact fractions inside and decimals in and out. A pressure is always gauge or
absolute, a percentage always says of what, and days and months of the calendar are never
changed into hours. What an author writes wrongly is a `QuantityError`, whose message is one
sentence with the mend.
"""

from __future__ import annotations

import difflib
import itertools
import re
from dataclasses import dataclass, field
from fractions import Fraction
from functools import lru_cache
from typing import NoReturn

from basinside.units import BASE_UNITS, SPELLINGS, UNITS, WRITABLE, Kind

__all__ = [
    "UNITS",
    "Kind",
    "Quantity",
    "QuantityError",
    "in_words",
    "parse_quantity",
    "quantity_in",
]

NO_BREAK_SPACE = "\u00a0"
MOST_FIGURES = 15  # figures in one written number; more is a slip, never a clinic's value
PLACES_IN_BASE = 9  # decimals kept by `base_text` when a value has no finite decimal
FIGURES_SHOWN = 4  # significant figures shown by `numeral` when a value has no finite decimal
ABSOLUTE_ZERO_CELSIUS = Fraction("-273.15")  # BIPM, SI Brochure, 9th edition, 2019, 2.3.1


class QuantityError(ValueError):
    """An amount that cannot be read; the message is one sentence with the mend."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Quantity:
    """An exact amount in a named unit.

    Parameters
    ----------
    number:
        How many of `unit`; for a time in several units, how many of the smallest.
    unit:
        A name in `UNITS`: `min`, `h min`, `day`, `kPa gauge`, `% available chlorine`, `use` ...

    Raises
    ------
    ValueError
        When `unit` is no name in `UNITS`.
    """

    number: Fraction
    unit: str
    base: Fraction = field(init=False, repr=False)
    """The amount in the base unit of its kind (`BASE_UNITS`)."""

    def __post_init__(self) -> None:
        if self.unit not in UNITS:
            raise ValueError(f"no unit is named {self.unit!r}")
        object.__setattr__(self, "base", self.number * UNITS[self.unit].factor)

    @property
    def kind(self) -> Kind:
        """What is measured."""
        return UNITS[self.unit].kind

    @property
    def exact(self) -> bool:
        """Whether `numeral` shows the whole number, with nothing rounded away."""
        return _places(self.number) is not None

    def base_text(self) -> str:
        """The amount in base units as digests know it: `1200 s`, `7 day`, `103000 Pa gauge`.

        A plain decimal with every figure, no exponent, no trailing zero. A value without a finite
        decimal (any psi that is not nought, or a third of something) is rounded to
        `PLACES_IN_BASE` decimals, half to even, and trailing zeros are then dropped.
        """
        return f"{_decimal(self.base, PLACES_IN_BASE)} {BASE_UNITS[self.kind]}"

    def text(self) -> str:
        """The amount as people read it, held together by no-break spaces: `1 h 40 min`."""
        return _text(self.number, self.unit)

    def numeral(self) -> str:
        """What stands before the last unit: `20` of `20 min`, `1 h 40` of `1 h 40 min`.

        A number without a finite decimal is rounded to `FIGURES_SHOWN` figures, its whole part
        always in full; `exact` says whether that happened.
        """
        pieces = self._pieces()
        words = [word for number, name in pieces[:-1] for word in (_shown(number), name)]
        return NO_BREAK_SPACE.join((*words, _shown(pieces[-1][0])))

    def unit_text(self) -> str:
        """The last unit as it stands after `numeral`: `min`, `days`; empty for a bare count."""
        number, name = self._pieces()[-1]
        return UNITS[name].one if number == 1 else UNITS[name].many

    def in_unit(self, unit: str) -> Quantity:
        """The same amount in another unit of its kind.

        `unit` is any spelling (`minutes`, `h min`); what the kind already says may be left out
        (`ppm` for a chlorine strength, `kPa` for a gauge pressure).

        Raises
        ------
        QuantityError
            When there is no such unit, or it is of another kind.
        """
        name = SPELLINGS.get(unit) or SPELLINGS.get(f"{unit} {_SAID_BY_KIND.get(self.kind)}")
        if name is None:
            _refuse_unit(unit)
        if UNITS[name].kind is not self.kind:
            raise QuantityError(
                f'Choose a unit of {self.kind} for "{self.text()}", not "{_clip(unit)}".'
            )
        return Quantity(number=self.base / UNITS[name].factor, unit=name)

    def _pieces(self) -> list[tuple[Fraction, str]]:
        steps = UNITS[self.unit].steps
        if not steps:
            return [(self.number, self.unit)]
        sign, left = (-1 if self.base < 0 else 1), abs(self.base)
        pieces = []
        for name in steps[:-1]:
            whole = Fraction(left // UNITS[name].factor)
            left -= whole * UNITS[name].factor
            if whole:
                pieces.append((whole, name))
        if left or not pieces:
            pieces.append((left / UNITS[steps[-1]].factor, steps[-1]))
        return [(sign * pieces[0][0], pieces[0][1]), *pieces[1:]]

    def _base_beside(self, other: Quantity) -> Fraction:
        if self.kind is not other.kind:
            raise TypeError(f"{self.kind} and {other.kind} cannot be compared")
        return other.base

    def __eq__(self, other: object) -> bool:
        if self is other:
            return True
        if not isinstance(other, Quantity):
            return NotImplemented
        return self.kind is other.kind and self.base == other.base

    def __hash__(self) -> int:
        return hash((self.kind, self.base))

    def __lt__(self, other: Quantity) -> bool:
        return self.base < self._base_beside(other)

    def __le__(self, other: Quantity) -> bool:
        return self.base <= self._base_beside(other)

    def __gt__(self, other: Quantity) -> bool:
        return self.base > self._base_beside(other)

    def __ge__(self, other: Quantity) -> bool:
        return self.base >= self._base_beside(other)

    def __str__(self) -> str:
        return self.text()


@lru_cache(maxsize=4096)
def in_words(text: str) -> str:
    """Return a shown amount that may be broken into lines, though never after a number.

    Examples
    --------
    >>> in_words(parse_quantity("0.1 % available chlorine").text()).split(" ")[1:]
    ['available', 'chlorine']
    """
    pieces = text.replace(NO_BREAK_SPACE, " ").split(" ")
    said = pieces[0]
    for before, piece in itertools.pairwise(pieces):
        said += (NO_BREAK_SPACE if before[:1].isdigit() else " ") + piece
    return said


@lru_cache(maxsize=4096)
def _text(number: Fraction, unit: str) -> str:
    amount = Quantity(number=number, unit=unit)
    return NO_BREAK_SPACE.join(filter(None, (amount.numeral(), amount.unit_text())))


_SAID_BY_KIND = {
    Kind.CHLORINE: "available chlorine",
    Kind.GAUGE: "gauge",
    Kind.ABSOLUTE: "absolute",
}
_WHOLE_KINDS = {Kind.COUNT: "a count", Kind.DAYS: "days", Kind.MONTHS: "months"}
_BELOW_NOUGHT = frozenset({Kind.TEMPERATURE, Kind.GAUGE})
_NUMBER = re.compile(r"[0-9]+(?:\.[0-9]+)?")
_START = re.compile(r"\A(-?)([0-9.,]*)\s*(.*)", re.DOTALL)
_IN_STEPS = re.compile(
    r"(?:([0-9.]+)\s*(?:hours?|h)\s*)?(?:([0-9.]+)\s*(?:minutes?|min)\s*)?"
    r"(?:([0-9.]+)\s*(?:seconds?|s))?"
)


def parse_quantity(text: str) -> Quantity:
    """Read one amount as an author writes it.

    Parameters
    ----------
    text:
        A number with a decimal point and its unit (`20 min`, `1 h 40 min`, `90 days`, `121 °C`,
        `106 kPa gauge`, `0.5 % available chlorine`), or a bare whole number, which is a count.

    Raises
    ------
    QuantityError
        When it cannot be read as exactly one amount. Nothing else is raised for any text.

    Examples
    --------
    >>> parse_quantity("20 min").base_text()
    '1200 s'
    """
    return _parsed(text)


_DIGITS = re.compile(r"[0-9]")
_ENDS = frozenset(_DIGITS.split(spelling.split()[-1])[-1] for spelling in WRITABLE) | {""}


def quantity_in(text: str) -> Quantity | None:
    """Return the amount that a text is, as `parse_quantity` reads it, or None for any other text.

    For sentences, few of which are amounts: no mend is looked for, which takes a hundred times as
    long as to see that a text does not end with a unit.
    """
    words = text.split()
    if not words or _DIGITS.split(words[-1])[-1] not in _ENDS:
        return None
    try:
        return _parsed(text)
    except QuantityError:
        return None


@lru_cache(maxsize=4096)  # a handbook writes the same few amounts over and over
def _parsed(text: str) -> Quantity:
    line = " ".join(text.split()).replace("\u2212", "-")
    in_steps = _IN_STEPS.fullmatch(line)
    if in_steps and sum(group is not None for group in in_steps.groups()) > 1:
        return _in_steps(in_steps)
    sign, figures, written = _START.findall(line)[0]  # each part may be empty: it always fits
    number = _number(figures, written, line) * (-1 if sign else 1)
    if not written:
        if number.denominator != 1 or "." in figures:
            raise QuantityError(f'Write the unit after the number, as in "{figures} mL".')
        return _sensible(Quantity(number=number, unit="count"), figures)
    name = WRITABLE.get(written)
    if name is None:
        _refuse_rest(figures, written)
    return _sensible(Quantity(number=number, unit=name), figures)


def _number(figures: str, written: str, line: str) -> Fraction:
    if not any(figure.isdigit() for figure in figures):
        asked = f', not "{_clip(line)}"' if line else ""
        raise QuantityError(f'Begin with the number in figures, as in "20 min"{asked}.')
    if sum(figure.isdigit() for figure in figures) > MOST_FIGURES:
        raise QuantityError(f"Write the number with at most {MOST_FIGURES} figures.")
    if re.fullmatch(r"[1-9][0-9]{0,2}(?:,[0-9]{3})+(?:\.[0-9]+)?", figures):
        raise QuantityError(f"Write {figures.replace(',', '')} without a comma.")
    if re.fullmatch(r"[0-9]+,[0-9]+", figures):
        raise QuantityError(f'Write {figures.replace(",", ".")} with a point, not "{figures}".')
    if re.fullmatch(r"\.[0-9]+", figures):
        raise QuantityError(f'Write 0{figures} with a nought before the point, not "{figures}".')
    if not _NUMBER.fullmatch(figures):
        raise QuantityError(
            f'Write the number as in 20 or 0.5, with one point at most, not "{_clip(figures)}".'
        )
    if re.match(r"[0-9]", written):
        raise QuantityError("Write one number without spaces inside it, then its unit.")
    if re.match(r"(?:[-–—]|to\b|or\b|…)\s*[0-9]", written):
        raise QuantityError("Write one number here, not a range of two.")
    if re.match(r"(?:[eE][+-]?[0-9]|[/½¼¾⅓⅔×^*])", written):
        raise QuantityError("Write the number as a plain decimal, such as 0.5 or 1000.")
    return Fraction(figures)


def _in_steps(found: re.Match[str]) -> Quantity:
    steps = zip(found.groups(), ("h", "min", "s"), strict=True)
    given = [(figures, name) for figures, name in steps if figures is not None]
    names = tuple(name for _, name in given)
    if names == ("h", "s"):
        names = ("h", "min", "s")
    total = Fraction(0)
    for position, (figures, name) in enumerate(given):
        number = _number(figures, "", figures)
        if "." in figures and position < len(given) - 1:
            raise QuantityError(f"Write {figures} {name} as a whole number or in one unit only.")
        if position and number >= 60:
            raise QuantityError(
                f"Write less than 60 {name} after {given[position - 1][1]}, or one unit only."
            )
        total += number * UNITS[name].factor
    return Quantity(number=total / UNITS[names[-1]].factor, unit=" ".join(names))


def _sensible(quantity: Quantity, figures: str) -> Quantity:
    kind = quantity.kind
    if quantity.number < 0 and kind not in _BELOW_NOUGHT:
        raise QuantityError(
            f"Write {figures} without the minus sign; {kind} is never below nought."
        )
    if kind is Kind.TEMPERATURE and quantity.base < ABSOLUTE_ZERO_CELSIUS:
        raise QuantityError("Write a temperature that is not below absolute zero, -273.15 °C.")
    if kind in _WHOLE_KINDS and quantity.base.denominator != 1:
        smaller = "" if kind is Kind.COUNT else " or choose a smaller unit,"
        raise QuantityError(
            f"Write {_WHOLE_KINDS[kind]} as a whole number,{smaller} "
            f"not {figures} {quantity.unit_text()}."
        )
    return quantity


def _refuse_rest(figures: str, written: str) -> NoReturn:
    if written == "%":
        raise QuantityError("Say of what the % is: % available chlorine, % w/v or % w/w.")
    if written == "ppm":
        raise QuantityError(f"Say what the ppm are of: write {figures} ppm available chlorine.")
    if f"{written} gauge" in WRITABLE:
        raise QuantityError(
            f"Say gauge or absolute: write {figures} {written} gauge "
            f"or {figures} {written} absolute."
        )
    _refuse_unit(written)


def _refuse_unit(written: str) -> NoReturn:
    folded: dict[str, str] = {}
    for spelling in WRITABLE:
        folded.setdefault(spelling.casefold(), spelling)
    meant = _clip(written).casefold()
    near = difflib.get_close_matches(meant, folded, n=1, cutoff=0.7) or [
        each
        for each in difflib.get_close_matches(meant, folded, n=1, cutoff=0.5)
        if each[:2] == meant[:2]
    ]
    mend = (
        f'"{folded[near[0]]}" or another known unit'
        if near
        else (
            "a known unit, such as min, days, °C, kPa gauge, % available chlorine, mL, g, m or uses"
        )
    )
    raise QuantityError(f'Write {mend}, not "{_clip(written)}".')


def _clip(written: str) -> str:
    shown = "".join(sign if sign.isprintable() else " " for sign in written[:60])
    shown = " ".join(shown.split())
    return shown if len(shown) <= 30 else f"{shown[:29]}…"


def _places(value: Fraction) -> int | None:
    """How many decimals write `value` in full; None when no number of them does."""
    left, twos, fives = value.denominator, 0, 0
    while left % 2 == 0:
        left, twos = left // 2, twos + 1
    while left % 5 == 0:
        left, fives = left // 5, fives + 1
    return max(twos, fives) if left == 1 else None


def _decimal(value: Fraction, places_if_endless: int) -> str:
    places = _places(value)
    if places is None:
        places = places_if_endless
    scaled = round(value * 10**places)
    figures = str(abs(scaled)).rjust(places + 1, "0")
    whole, rest = figures[: len(figures) - places], figures[len(figures) - places :].rstrip("0")
    return f"{'-' if scaled < 0 else ''}{whole}{'.' if rest else ''}{rest}"


def _shown(value: Fraction) -> str:
    size, places = abs(value), FIGURES_SHOWN
    while places and size >= 10 ** (FIGURES_SHOWN - places):
        places -= 1
    while size and size * 10 ** (places - FIGURES_SHOWN + 1) < 1:
        places += 1
    return _decimal(value, places)
