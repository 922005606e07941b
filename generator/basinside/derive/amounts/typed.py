"""What somebody typed, read strictly: a number in figures, a choice, a day, a time of the day.

A decimal comma is read and echoed. What can be read in two ways, as 1.500 and 1,500, is refused,
and so is everything that is not plainly a number: nobody measures chlorine by a guess.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from datetime import date
from fractions import Fraction
from typing import Final, NoReturn

from basinside.derive.amounts.numbers import plain
from basinside.model.amounts import Said, Typed, said

MOST_FIGURES: Final = 6  # nobody measures with more (our own bound)
MOST_SIGNS: Final = 40  # of a typed number (our own bound)
ECHOED_SIGNS: Final = 20  # of what could not be read
FIRST_YEAR, LAST_YEAR = 2000, 2100  # of a typed day (our own bounds)

SPACES: Final = " \t\n\r\f\v\u00a0\u2009\u202f"
_NUMBER: Final = re.compile(r"([0-9]+)(?:[.,]([0-9]+))?")
_BELOW: Final = re.compile(r"[-\u2212\u2013] ?[0-9]+(?:[.,][0-9]+)?")
_TWO_WAYS: Final = re.compile(r"([1-9][0-9]{0,2})[.,]([0-9]{3})")
_DAY: Final = re.compile(r"([0-9]{4})-([0-9]{2})-([0-9]{2})")
_MOMENT: Final = re.compile(r"([0-9]{4}-[0-9]{2}-[0-9]{2})[T ]([0-9]{2}):([0-9]{2})")


class RefusedInputError(Exception):
    """Something typed that cannot be answered; carries why, and what would do."""

    def __init__(self, reason: Said, *would_do: Said) -> None:
        super().__init__(reason.code)
        self.reason = reason
        self.would_do = would_do


def one_way(number: str) -> str:
    """Return a plain decimal as it can be read in one way only, were it typed.

    Examples
    --------
    >>> one_way("1.125"), one_way("1.5"), one_way("0.125")
    ('1.1250', '1.5', '0.125')
    """
    return f"{number}0" if _TWO_WAYS.fullmatch(number) else number


def bare(text: str) -> str:
    """Return a text without the spaces around it."""
    return text.strip(SPACES)


def echoed(text: str) -> str:
    """Return the beginning of what could not be read."""
    shown = bare(text)
    return shown if len(shown) <= ECHOED_SIGNS else shown[:ECHOED_SIGNS] + "…"


class Reader:
    """Reads the fields of one question; ``notes`` say how something was read."""

    def __init__(self, typed: Typed) -> None:
        self._typed = typed
        self.notes: list[Said] = []

    def text(self, field: str) -> str:
        """Return a field as typed, without spaces around it; empty when it is missing."""
        return bare(self._typed.get(field, ""))

    def choice(self, field: str, among: Iterable[str]) -> str:
        """Return one of a few words."""
        text = self.text(field)
        if text not in among:
            raise RefusedInputError(
                said("not-a-choice", field=field, typed=echoed(text)), said("choose-one")
            )
        return text

    def number(self, field: str, low: str, high: str, unit: str = "") -> Fraction:
        """Return a number between two bounds, both included."""
        return self.read(self.text(field), field, low, high, unit)

    def whole(self, field: str, low: str, high: str, unit: str = "") -> int:
        """Return a whole number between two bounds, both included."""
        number = self.number(field, low, high, unit)
        if number.denominator != 1:
            raise RefusedInputError(
                said("not-whole", field=field, number=plain(number)), said("write-whole")
            )
        return number.numerator

    def read(self, text: str, field: str, low: str, high: str, unit: str = "") -> Fraction:
        """Return a text as a number between two bounds, both included; a comma is noted once."""
        found = _matched(text, field)
        whole, decimals = found[1], found[2] or ""
        if len((whole + decimals).lstrip("0")) > MOST_FIGURES:
            raise RefusedInputError(
                said("too-many-figures", field=field, most=str(MOST_FIGURES)),
                said("round-it", most=str(MOST_FIGURES)),
            )
        number = Fraction(f"{whole}.{decimals or 0}")
        if not Fraction(low) <= number <= Fraction(high):
            raise RefusedInputError(
                said(
                    "out-of-range", field=field, number=plain(number), low=low, high=high, unit=unit
                ),
                said("check-unit"),
            )
        if "," in text and not any(each.code == "read-comma" for each in self.notes):
            self.notes.append(said("read-comma", typed=text, number=plain(number)))
        return number

    def day(self, field: str) -> date | None:
        """Return a civil day, or None when the field is empty."""
        text = self.text(field)
        return _day(text, field) if text else None

    def moment(self, field: str) -> tuple[date, int]:
        """Return a civil day and the minutes since its midnight."""
        text = self.text(field)
        found = _MOMENT.fullmatch(text)
        if not found:
            _refuse_day("not-a-moment", text, field)
        hour, minute = int(found[2]), int(found[3])
        if hour > 23 or minute > 59:
            _refuse_day("not-a-moment", text, field)
        return _day(found[1], field), hour * 60 + minute


def _matched(text: str, field: str) -> re.Match[str]:
    if not text:
        raise RefusedInputError(said("missing", field=field), said("write-number"))
    if len(text) > MOST_SIGNS:
        raise RefusedInputError(said("too-long", field=field), said("write-number"))
    if _BELOW.fullmatch(text):
        raise RefusedInputError(
            said("below-nought", field=field, typed=echoed(text)), said("write-number")
        )
    two_ways = _TWO_WAYS.fullmatch(text)
    if two_ways:
        ways = {
            "whole": two_ways[1] + two_ways[2],
            "part": f"{two_ways[1]}.{two_ways[2].rstrip('0') or '0'}",
        }
        raise RefusedInputError(
            said("two-ways", field=field, typed=text, **ways), said("write-one-way", **ways)
        )
    found = _NUMBER.fullmatch(text)
    if not found:
        raise RefusedInputError(
            said("not-a-number", field=field, typed=echoed(text)), said("write-number")
        )
    return found


def _day(text: str, field: str) -> date:
    found = _DAY.fullmatch(text)
    if not found:
        _refuse_day("not-a-day", text, field)
    try:
        day = date(int(found[1]), int(found[2]), int(found[3]))
    except ValueError:
        _refuse_day("not-a-day", text, field)
    if not FIRST_YEAR <= day.year <= LAST_YEAR:
        _refuse_day("not-a-day", text, field)
    return day


def _refuse_day(code: str, text: str, field: str) -> NoReturn:
    if not text:
        raise RefusedInputError(said("missing", field=field), said(f"{code}-write"))
    raise RefusedInputError(said(code, field=field, typed=echoed(text)), said(f"{code}-write"))
