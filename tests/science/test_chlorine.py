"""Chlorine amounts against published examples and tables, and against their own identities."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal
from fractions import Fraction
from math import ceil
from typing import Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from basinside.quantity import parse_quantity
from basinside.science import chlorine
from basinside.science.chlorine import (
    available_percent,
    grams_per_litre,
    parts_of_water,
    percent_from_degrees,
    percent_from_degrees_by_gas,
    stock_millilitres,
    strength_percent,
    tablets_per_litre,
)

PPM = 10_000  # domain facts, section 1.1, CL-12, "V": 1 ppm is 0.0001 %

# Domain facts, section 1.1: id, stock %, wanted %, parts of water.
PARTS = (
    ("CL-02 CDC appendix E example 1, V", 3.5, 0.5, 6),
    ("CL-06 CDC appendix E example 3, V", 5, 0.1, 49),
    ("CL-07 colposcopy manual ch. 14, V2/C", 5, 0.5, 9),
    ("CL-08 WHO 2014 annex G table G.1, V", 5, 0.05, 99),
)
# The same: id, stock %, parts in all, ppm and by how much the print rounds.
ONE_IN = (
    ("CL-08 WHO 2014 annex G table G.1, V", 5, 100, 500, 0),
    ("CL-14 university safety sheet, V", 5.25, 10, 5250, 0),
    ("CL-15 CDC environmental guidance reprint, V2", 6.15, 10, 6150, 0),
    ("CL-15 the same, lower end", 5.25, 10, 5000, 250),
    ("CL-15 1:100", 6.15, 100, 615, 0),
    ("CL-15 1:100, lower end", 5.25, 100, 500, 25),
    ("CL-17 Ontario office table 3, V", 5, 50, 1000, 0),
)
# Section 1.1 and 1.2: id, active %, wanted %, printed g/L, by how much the print rounds.
GRAMS = (
    ("CL-04 CDC appendix E example 2, V", 35, 0.5, 14.3, 0.05),
    ("CL-05 another handout, V", 35, 0.5, 14.2, 0.1),
    ("CL-21 WHO table 12, calcium hypochlorite, V", 70, 0.1, 1.4, 0.05),
    ("CL-21 0.5 %", 70, 0.5, 7.0, 0.15),
    ("CL-22 WHO table 12, NaDCC powder, V", 60, 0.1, 1.7, 0.05),
    ("CL-22 0.5 %", 60, 0.5, 8.5, 0.2),
    ("CL-24 WHO table 12, chloramine, V", 25, 0.5, 20, 0),
)
# CL-28, "V": mg of NaDCC for mg of chlorine in a litre, whole or half mg, 60 % as in CL-22.
TABLET_MG = ((8.5, 5), (17, 10), (3.5, 2), (33, 20), (67, 40), (167, 100))

# Section 1.3, "C": stock %, then parts of water and mL in 1,000 mL for 0.5, 0.1 and 0.05 %.
MADE_UP = (
    (2.4, "3.8", "208.3", "23", "41.7", "47", "20.8"),
    (2.5, "4", "200", "24", "40", "49", "20"),
    (3.0, "5", "166.7", "29", "33.3", "59", "16.7"),
    (3.5, "6", "142.9", "34", "28.6", "69", "14.3"),
    (4, "7", "125", "39", "25", "79", "12.5"),
    (5, "9", "100", "49", "20", "99", "10"),
    (5.25, "9.5", "95.2", "51.5", "19.0", "104", "9.5"),
    (8, "15", "62.5", "79", "12.5", "159", "6.25"),
    (10, "19", "50", "99", "10", "199", "5"),
    (12, "23", "41.7", "119", "8.3", "239", "4.2"),
    (15, "29", "33.3", "149", "6.7", "299", "3.3"),
)
# The same: active %, then g/L for these strengths.
POWDER_STRENGTHS = (0.05, 0.1, 0.2, 0.5, 1, 2)
POWDER = (
    (25, "2.00", "4.00", "8.00", "20.00", "40.0", "80.0"),
    (30, "1.67", "3.33", "6.67", "16.67", "33.3", "66.7"),
    (35, "1.43", "2.86", "5.71", "14.29", "28.6", "57.1"),
    (60, "0.83", "1.67", "3.33", "8.33", "16.7", "33.3"),
    (65, "0.77", "1.54", "3.08", "7.69", "15.4", "30.8"),
    (70, "0.71", "1.43", "2.86", "7.14", "14.3", "28.6"),
)
# The same, and CL-23 "V": tablets in 1 L, g in each, %. What is asked for needs that many.
TABLETS = (
    (5, 1.0, 0.5, 0.5),
    (4, 1.5, 0.5, 0.6),
    (3, 1.5, 0.45, 0.45),
    (2, 2.5, 0.5, 0.5),
    (1, 1.5, 0.1, 0.15),
)
# Section 1.3, edge cases: degrees, % by 0.3, % by 0.317 as printed.
DEGREES = ((8, 2.4, 2.54), (12, 3.6, 3.80), (15, 4.5, 4.76), (48, 14.4, 15.2))

PERCENT = st.decimals(min_value="0.001", max_value=100, places=3)
NO_NUMBERS: tuple[Any, ...] = (
    float("nan"), float("inf"), -float("inf"), True, False, None, "5", Decimal("NaN"), 1j
)  # fmt: skip


def shown(value: float, like: str) -> str:
    return f"{value:.{len(like.partition('.')[2])}f}"


@pytest.mark.parametrize(("row", "stock", "wanted", "parts"), PARTS)
def test_parts_of_water_are_the_published_ones(
    row: str, stock: float, wanted: float, parts: float
) -> None:
    assert parts_of_water(stock, wanted) == parts
    assert strength_percent(stock, 1, parts) == wanted


@pytest.mark.parametrize(("row", "stock", "of", "ppm", "rounding"), ONE_IN)
def test_one_in_so_many_is_the_published_strength(
    row: str, stock: float, of: int, ppm: float, rounding: float
) -> None:
    made = strength_percent(stock, 1, of - 1) * PPM
    assert made == pytest.approx(ppm, abs=rounding + 1e-9)


def test_one_in_five_hundred_is_above_the_published_strength() -> None:
    assert strength_percent(5.25, 1, 499) * PPM > 100  # CL-16, CDC 2008 table 1, "V"


@pytest.mark.parametrize(("row", "active", "wanted", "grams", "rounding"), GRAMS)
def test_grams_are_the_published_ones(
    row: str, active: float, wanted: float, grams: float, rounding: float
) -> None:
    assert grams_per_litre(active, wanted) == pytest.approx(grams, abs=rounding)
    assert grams_per_litre(active, wanted) == pytest.approx(wanted / active * 1000)  # CL-03, "V"


def test_one_printed_amount_of_chloramine_is_the_one_for_blood() -> None:
    # CL-24, WHO table 12, "V": 20 g/L under both headings; 0.1 % would take a fifth of it.
    assert grams_per_litre(25, 0.1) == 4
    assert grams_per_litre(25, 0.5) == 20


@pytest.mark.parametrize(("tablet_mg", "chlorine_mg"), TABLET_MG)
def test_water_treatment_tablets_hold_the_published_chlorine(
    tablet_mg: float, chlorine_mg: float
) -> None:
    computed = grams_per_litre(60, chlorine_mg / PPM) * 1000
    assert computed == pytest.approx(tablet_mg, abs=0.5)


def test_liquid_in_a_litre_is_the_published_amount() -> None:
    # CL-20, WHO table 12, "V": 5 %, 20 mL/L for 0.1 % and 100 mL/L for 0.5 %.
    assert stock_millilitres(1000, 5, 0.1) == 20
    assert stock_millilitres(1000, 5, 0.5) == 100


@pytest.mark.parametrize("row", MADE_UP)
def test_parts_and_millilitres_are_the_computed_ones(row: tuple[Any, ...]) -> None:
    stock, *cells = row
    for wanted, parts, ml in zip((0.5, 0.1, 0.05), cells[::2], cells[1::2], strict=True):
        assert shown(parts_of_water(stock, wanted), parts) == parts
        assert shown(stock_millilitres(1000, stock, wanted), ml) == ml


@pytest.mark.parametrize("row", POWDER)
def test_powder_is_the_computed_one(row: tuple[Any, ...]) -> None:
    active, *cells = row
    for wanted, grams in zip(POWDER_STRENGTHS, cells, strict=True):
        assert shown(grams_per_litre(active, wanted), grams) == grams


@pytest.mark.parametrize(("tablets", "grams", "wanted", "true"), TABLETS)
def test_tablets_are_the_published_ones(
    tablets: int, grams: float, wanted: float, true: float
) -> None:
    found = tablets_per_litre(grams, wanted)
    assert (found.tablets, found.true_percent) == (tablets, true)


def test_nothing_is_counted_twice_for_the_last_figure_of_a_float() -> None:
    assert ceil(0.21 * 10 / 0.3) == 8  # plain floats would take one tablet too many
    assert tablets_per_litre(0.3, 0.21).tablets == 7


@pytest.mark.parametrize(("degrees", "percent", "by_gas"), DEGREES)
def test_degrees_are_the_published_strengths(degrees: float, percent: float, by_gas: float) -> None:
    # CL-10, CDC appendix E footnote 2, "V", and CL-11, "C/M".
    assert percent_from_degrees(degrees) == percent
    rounding = 0.05 if by_gas == 15.2 else 0.005
    assert percent_from_degrees_by_gas(degrees) == pytest.approx(by_gas, abs=rounding + 1e-9)


def test_a_label_in_hypochlorite_is_the_computed_chlorine() -> None:
    assert f"{available_percent(100):.2f}" == "95.25"  # section 1.3, edge cases, "C"
    assert f"{available_percent(5.25):.2f}" == "5.00"


def test_the_product_as_it_is_needs_no_water() -> None:
    assert parts_of_water(0.5, 0.5) == 0
    assert stock_millilitres(1000, 0.5, 0.5) == 1000


def test_added_to_a_litre_is_weaker_than_made_up_to_it() -> None:
    # Section 1.3, edge cases, "C": 0.4545 % and 0.500 %, and 1 + 10 against 1 in 10.
    assert f"{strength_percent(5, 100, 1000):.4f}" == "0.4545"
    assert f"{strength_percent(5, 1, 10):.4f}" == "0.4545"
    assert strength_percent(5, stock_millilitres(1000, 5, 0.5), 900) == 0.5
    assert strength_percent(5, 1, 9) == 0.5


def test_ppm_and_percent_are_one_strength() -> None:
    # CL-12 and CL-13, "V"; that 0.5 % were 10,000 ppm is a mistake of study material.
    for percent, ppm in ((0.5, 5000), (0.05, 500), (0.0001, 1)):
        said = parse_quantity(f"{percent} % available chlorine")
        assert said == parse_quantity(f"{ppm} ppm available chlorine")
    assert parse_quantity("0.5 % available chlorine").base != 10_000


@given(PERCENT, PERCENT)
def test_water_added_by_the_parts_makes_the_wanted_strength(
    stock: Decimal, wanted: Decimal
) -> None:
    assume(wanted <= stock)
    parts = parts_of_water(stock, wanted)
    assert parts >= 0
    assert strength_percent(stock, 1, parts) == pytest.approx(float(wanted), rel=1e-12)
    assert stock_millilitres(parts + 1, stock, wanted) == pytest.approx(1, rel=1e-12)
    assert grams_per_litre(stock, wanted) == pytest.approx(1000 / (parts + 1), rel=1e-12)


@given(PERCENT, PERCENT, st.sampled_from([float, Decimal, Fraction]))
def test_no_kind_of_number_answers_otherwise(
    stock: Decimal, wanted: Decimal, kind: Callable[[Any], Any]
) -> None:
    assume(wanted <= stock)
    exactly = Fraction(stock) / Fraction(wanted) - 1
    assert parts_of_water(kind(stock), kind(wanted)) == float(exactly)


@given(st.decimals(min_value="0.01", max_value=20, places=2), PERCENT)
def test_tablets_are_the_fewest_that_are_strong_enough(grams: Decimal, wanted: Decimal) -> None:
    found = tablets_per_litre(grams, wanted)
    made = Fraction(grams) * found.tablets / 10
    assert found.tablets == ceil(Fraction(wanted) * 10 / Fraction(grams))
    assert made - Fraction(grams) / 10 < wanted <= made
    assert found.true_percent == float(made) >= float(wanted)


@given(st.integers(min_value=1, max_value=100))
def test_degrees_on_the_safe_side_use_more_product(degrees: int) -> None:
    weaker, stronger = percent_from_degrees(degrees), percent_from_degrees_by_gas(degrees)
    assert weaker < stronger
    if weaker >= 0.1:
        assert stock_millilitres(1000, weaker, 0.1) > stock_millilitres(1000, stronger, 0.1)


@pytest.mark.parametrize("number", [*NO_NUMBERS, 0, -1, 101, 1e-9])
def test_a_strength_that_is_none_is_an_error(number: Any) -> None:
    for ask in (
        lambda: parts_of_water(number, 0.5),
        lambda: parts_of_water(100, number),
        lambda: grams_per_litre(number, 0.5),
        lambda: grams_per_litre(100, number),
        lambda: stock_millilitres(1000, number, 0.5),
        lambda: stock_millilitres(1000, 100, number),
        lambda: strength_percent(number, 1, 9),
        lambda: available_percent(number),
        lambda: tablets_per_litre(1.5, number),
    ):
        with pytest.raises(ValueError, match=r"percent must be 1e-06 to 100, not"):
            ask()


@pytest.mark.parametrize("number", [*NO_NUMBERS, 0, -1])
def test_an_amount_that_is_none_is_an_error(number: Any) -> None:
    with pytest.raises(ValueError, match="volume_ml must be above 0"):
        stock_millilitres(number, 5, 0.5)
    with pytest.raises(ValueError, match="stock_ml must be above 0"):
        strength_percent(5, number, 1)
    with pytest.raises(ValueError, match="grams_active_per_tablet must be"):
        tablets_per_litre(number, 0.5)


@pytest.mark.parametrize("water", [*NO_NUMBERS[:3], True, "1", None, -1])
def test_water_that_is_none_is_an_error(water: Any) -> None:
    with pytest.raises(ValueError, match="water_ml must be"):
        strength_percent(5, 1, water)


@pytest.mark.parametrize("number", [*NO_NUMBERS, -1, 101])
def test_degrees_outside_the_range_are_an_error(number: Any) -> None:
    for ask in (percent_from_degrees, percent_from_degrees_by_gas):
        with pytest.raises(ValueError, match="degrees must be 0 to 100"):
            ask(number)


@given(PERCENT, PERCENT)
def test_more_than_the_product_has_is_an_error_and_never_negative(
    stock: Decimal, wanted: Decimal
) -> None:
    assume(wanted > stock)
    for ask in (parts_of_water, grams_per_litre, lambda s, w: stock_millilitres(1000, s, w)):
        with pytest.raises(ValueError, match="wanted_percent must not be above"):
            ask(stock, wanted)


def test_the_safe_side_of_a_degree_is_the_weaker_one() -> None:
    assert chlorine.PERCENT_PER_DEGREE == 0.3
    assert chlorine.PERCENT_PER_DEGREE_BY_GAS == 0.317
