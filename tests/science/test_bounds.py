"""How this room reads numbers, and that each function of it does; its examples run."""

from __future__ import annotations

import doctest
import importlib
import pkgutil
from collections.abc import Callable
from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from basinside import science
from basinside.science.atmosphere import pressure_kpa
from basinside.science.boiling import boiling_point_celsius
from basinside.science.bounds import above_nought, exact, not_above, whole, within
from basinside.science.steam import (
    gauge_pressure_kpa,
    saturation_celsius,
    saturation_pressure_kpa,
    temperature_at_gauge,
)

MODULES = sorted(each.name for each in pkgutil.iter_modules(science.__path__))
NO_NUMBERS: tuple[Any, ...] = (
    True, False, "1", None, 1j, [1],
    float("nan"), float("inf"), Decimal("NaN"), Decimal("sNaN"), Decimal("Infinity"),
)  # fmt: skip
ONE_NUMBER: tuple[Callable[[Any], object], ...] = (
    pressure_kpa,
    boiling_point_celsius,
    saturation_pressure_kpa,
    saturation_celsius,
    lambda number: gauge_pressure_kpa(number, 0),
    lambda number: gauge_pressure_kpa(121, number),
    lambda number: temperature_at_gauge(number, 0),
    lambda number: temperature_at_gauge(106, number),
    lambda number: temperature_at_gauge(106, 0, number),
    lambda number: exact("number", number),
    lambda number: within("number", number, -5, 5),
    lambda number: above_nought("number", number),
    lambda number: whole("number", number, 0),
)


@pytest.mark.parametrize("module", MODULES)
def test_the_examples_in_the_words_are_true(module: str) -> None:
    told = doctest.testmod(importlib.import_module(f"basinside.science.{module}"))
    assert told.failed == 0
    assert told.attempted


@pytest.mark.parametrize("number", NO_NUMBERS)
@pytest.mark.parametrize("ask", ONE_NUMBER)
def test_what_is_no_number_is_an_error(ask: Callable[[Any], object], number: Any) -> None:
    with pytest.raises(ValueError, match="must be"):
        ask(number)


@pytest.mark.parametrize("kind", [int, Fraction, Decimal])
@pytest.mark.parametrize("ask", ONE_NUMBER[:-1])
def test_what_no_float_can_hold_is_an_error(
    ask: Callable[[Any], object], kind: Callable[[int], Any]
) -> None:
    with pytest.raises(ValueError, match="must be"):
        ask(kind(10**400))


@given(st.floats(allow_nan=False, allow_infinity=False))
def test_a_number_is_read_as_it_is_written(number: float) -> None:
    assert exact("number", number) == Fraction(repr(number))
    assert float(exact("number", number)) == number


def test_a_tenth_is_a_tenth() -> None:
    for tenth in (0.1, Decimal("0.1"), Fraction(1, 10)):
        assert exact("number", tenth) == Fraction(1, 10)
        assert within("number", tenth, 0.1, 0.1) == Fraction(1, 10)


@pytest.mark.parametrize("number", [0, 0.0, -0.0, -1e-300, Decimal(0), Fraction(-1, 3)])
def test_nothing_is_not_above_nought(number: Any) -> None:
    with pytest.raises(ValueError, match="number must be above 0"):
        above_nought("number", number)


@pytest.mark.parametrize("number", [1.0, 1.5, Decimal(1), Fraction(1), -1])
def test_a_whole_number_is_an_int_from_its_lowest_on(number: Any) -> None:
    with pytest.raises(ValueError, match="number must be a whole number and not below 0"):
        whole("number", number, 0)
    assert whole("number", 0, 0) == 0


@given(st.fractions(min_value=-1000, max_value=1000))
def test_the_nearest_float_from_below_is_not_above(number: Fraction) -> None:
    below = not_above(number)
    assert Fraction(below) <= number
    assert number - Fraction(below) <= Fraction(1, 10**12)
