"""An amount in the house's own measures: never too little, as near as can be, few pours."""

from __future__ import annotations

from bisect import bisect_left
from fractions import Fraction
from itertools import combinations_with_replacement
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from basinside.science.chlorine import stock_millilitres, strength_percent
from basinside.science.house_measures import (
    MOST_SMALL_STEPS,
    Measure,
    Measured,
    in_house_measures,
)

JUG = Measure(name="jug", holds=1000, marks=50)
SYRINGE = Measure(name="syringe", holds=10)
MARKED_SYRINGE = Measure(name="syringe", holds=20, marks=1)
CUP = Measure(name="cup", holds=60)
SPOON = Measure(name="spoon", holds=5)
HOUSE = (JUG, SYRINGE, SPOON)


def told(found: Measured) -> str:
    return ", ".join(f"{each.times} x {each.measure} {each.amount:g}" for each in found.amounts)


@pytest.mark.parametrize(
    ("amount", "house", "said", "true"),
    [
        (100, HOUSE, "1 x jug 100", 100),
        (20, HOUSE, "2 x syringe 10", 20),
        (23, HOUSE, "2 x syringe 10, 1 x spoon 5", 25),
        (5, HOUSE, "1 x spoon 5", 5),
        (6, HOUSE, "1 x syringe 10", 10),  # not two spoons: fewer pours
        (142.9, HOUSE, "1 x jug 150", 150),  # not the jug, four syringes and a spoon
        (40, HOUSE, "4 x syringe 10", 40),  # four steps, and no more
        (41, HOUSE, "1 x jug 50", 50),
        (60, (JUG, MARKED_SYRINGE, CUP), "1 x cup 60", 60),  # not a jug and a syringe
        (0.5, HOUSE, "1 x spoon 5", 5),
        (1000, HOUSE, "1 x jug 1000", 1000),
        (5212, HOUSE, "5 x jug 1000, 1 x jug 200, 1 x syringe 10, 1 x spoon 5", 5215),
        (103, (JUG, MARKED_SYRINGE), "1 x jug 100, 1 x syringe 3", 103),
        (28.6, (JUG, MARKED_SYRINGE, SPOON), "1 x syringe 20, 1 x syringe 9", 29),
        (7.14, (SPOON,), "2 x spoon 5", 10),
        (35.7, (SPOON,), "8 x spoon 5", 40),  # as many of the largest as it takes
        (980, (Measure(name="jug", holds=970, marks=300),), "1 x jug 970, 1 x jug 300", 1270),
        (950, (Measure(name="jug", holds=970, marks=300),), "1 x jug 970", 970),
        (10, (7, 5), "2 x 5 5", 10),
    ],
)
def test_amount_is_measured_as_a_nurse_would(
    amount: float, house: tuple[Measure | float, ...], said: str, true: float
) -> None:
    found = in_house_measures(amount, house)
    assert told(found) == said
    assert found.true_amount == true


def nearest_of_all(amounts: range, house: tuple[Measure, ...]) -> list[int]:
    """Try every set of readings: four steps beside full ones of the largest."""
    readings = set()
    for each in house:
        holds, marks = int(each.holds), int(each.marks or each.holds)
        readings |= {*range(marks, holds + 1, marks), holds}
    small = {
        sum(chosen)
        for steps in range(MOST_SMALL_STEPS + 1)
        for chosen in combinations_with_replacement(sorted(readings), steps)
    }
    largest = max(int(each.holds) for each in house)
    reached = sorted({full * largest + each for full in range(5) for each in small})
    return [reached[bisect_left(reached, amount)] for amount in amounts]


@pytest.mark.parametrize(
    "house",
    [
        HOUSE,
        (SPOON, SYRINGE, JUG),
        (Measure(name="jug", holds=500, marks=100), Measure(name="cup", holds=60, marks=20), SPOON),
        (Measure(name="bottle", holds=300), SYRINGE, SPOON),
    ],
)
def test_no_other_practicable_way_is_nearer(house: tuple[Measure, ...]) -> None:
    amounts = range(1, 1100, 7)
    found = [in_house_measures(amount, house) for amount in amounts]
    assert [each.true_amount for each in found] == nearest_of_all(amounts, house)


SIZES = st.decimals(min_value="0.1", max_value=2000, places=1)


@st.composite
def measures(draw: st.DrawFn) -> Measure:
    holds = draw(SIZES)
    parts = draw(st.none() | st.integers(min_value=1, max_value=20))
    return Measure(name="m", holds=holds, marks=None if parts is None else Fraction(holds) / parts)


@given(
    st.decimals(min_value="0.1", max_value=5000, places=1),
    st.lists(measures(), min_size=1, max_size=4),
)
def test_it_is_never_too_little_and_never_a_whole_measure_too_much(
    amount: Any, house: list[Measure]
) -> None:
    found = in_house_measures(amount, house)
    poured = sum(Fraction(each.amount) * each.times for each in found.amounts)
    assert found.true_amount >= float(amount)
    assert found.true_amount == pytest.approx(float(poured))
    assert found.moves == sum(each.times for each in found.amounts)
    assert found.true_amount - float(amount) < max(float(each.holds) for each in house)
    assert found == in_house_measures(amount, list(house))


@given(st.decimals(min_value=2, max_value=15, places=2), st.sampled_from(["0.05", "0.1", "0.5"]))
def test_the_true_strength_is_never_below_the_wanted_one(stock: Any, wanted: str) -> None:
    true_ml = in_house_measures(stock_millilitres(1000, stock, float(wanted)), HOUSE).true_amount
    assert strength_percent(stock, true_ml, 1000 - true_ml) >= float(wanted) * (1 - 1e-12)


def test_the_order_of_the_pours_is_largest_first() -> None:
    pours = in_house_measures(1065, (SPOON, SYRINGE, JUG)).amounts
    assert [each.amount for each in pours] == [1000, 50, 10, 5]


@pytest.mark.parametrize("amount", [0, -1, float("nan"), float("inf"), True, "5", None])
def test_an_amount_that_is_none_is_an_error(amount: Any) -> None:
    with pytest.raises(ValueError, match="amount must be above 0"):
        in_house_measures(amount, HOUSE)


def test_a_house_without_measures_is_an_error() -> None:
    with pytest.raises(ValueError, match="at least one measure"):
        in_house_measures(5, ())


@pytest.mark.parametrize("number", [0, -1, float("nan"), float("inf"), True, "5"])
def test_a_measure_that_is_none_is_an_error(number: Any) -> None:
    with pytest.raises(ValueError, match="holds must be above 0"):
        Measure(name="jug", holds=number)
    with pytest.raises(ValueError, match="marks must be above 0"):
        Measure(name="jug", holds=100, marks=number)
    with pytest.raises(ValueError, match="marks must not be above holds"):
        Measure(name="jug", holds=100, marks=101)
