"""Boiling points against computed rows, published tables and other programs."""

from __future__ import annotations

import ambiance
import CoolProp.CoolProp
import pytest
from hypothesis import given
from hypothesis import strategies as st

from basinside.science.boiling import boiling_point_celsius

FOOT_METRES = 0.3048

# Domain facts, section 4, "C": ICAO standard atmosphere and IAPWS-IF97; the last two columns are
# the linear rule 100 - 0.00321 h and how much it errs.
COMPUTED = (
    (0, "99.97", "100.00", "+0.03"),
    (500, "98.31", "98.39", "+0.08"),
    (1000, "96.65", "96.79", "+0.14"),
    (1500, "94.98", "95.19", "+0.20"),
    (2000, "93.32", "93.58", "+0.26"),
    (3000, "89.98", "90.37", "+0.39"),
    (4000, "86.63", "87.16", "+0.53"),
    (5000, "83.27", "83.95", "+0.68"),
    (5500, "81.58", "82.34", "+0.76"),
)
# The same section, [S58], "V": a published table, 0.1 to 0.2 low.
PUBLISHED_A_LITTLE_LOW = ((1000, 96.5), (2000, 93.1), (3000, 89.8), (4000, 86.5), (5000, 83.2))
# The same section, [S59], "V": an exponential atmosphere, 0.1 to 0.7 high; rows above 5,500 m are
# outside what is computed here.
PUBLISHED_A_LITTLE_HIGH = ((2000, 93.4), (4000, 87.3))


@pytest.mark.parametrize(("metres", "celsius", "linear", "errs"), COMPUTED)
def test_boiling_point_is_the_tabled_one(
    metres: float, celsius: str, linear: str, errs: str
) -> None:
    boils = boiling_point_celsius(metres)
    assert f"{boils:.2f}" == celsius
    rule = 100 - 0.00321 * metres
    assert rule == pytest.approx(float(linear), abs=0.0051)
    assert rule - boils == pytest.approx(float(errs), abs=0.0101)


@pytest.mark.parametrize(("metres", "celsius"), PUBLISHED_A_LITTLE_LOW)
def test_the_low_published_table_is_within_a_quarter_degree(metres: float, celsius: float) -> None:
    assert 0.05 <= boiling_point_celsius(metres) - celsius <= 0.25


@pytest.mark.parametrize(("metres", "celsius"), PUBLISHED_A_LITTLE_HIGH)
def test_the_high_published_table_is_within_a_degree(metres: float, celsius: float) -> None:
    assert 0.05 <= celsius - boiling_point_celsius(metres) <= 0.75


def test_five_thousand_feet_is_the_published_boiling_point() -> None:
    boils = boiling_point_celsius(5000 * FOOT_METRES)  # section 4, [S60], "V": 202.8 °F, 94.9 °C
    assert f"{boils:.2f}" == "94.90"
    assert f"{boils * 9 / 5 + 32:.1f}" == "202.8"


def test_water_at_the_highest_place_of_the_guidance_is_hot_enough() -> None:
    # Section 4, BO-04 and BO-05, "V/C": 81.6 °C at 5,500 m (18,000 ft), above the 80 °C needed.
    assert f"{boiling_point_celsius(5500):.1f}" == "81.6"
    assert boiling_point_celsius(18_000 * FOOT_METRES) > 80


@given(st.floats(min_value=0, max_value=5500))
def test_boiling_point_agrees_with_other_programs(metres: float) -> None:
    pascals = float(ambiance.Atmosphere(metres).pressure[0])
    kelvin = CoolProp.CoolProp.PropsSI("T", "P", pascals, "Q", 0, "Water")  # IAPWS-95
    assert boiling_point_celsius(metres) == pytest.approx(kelvin - 273.15, abs=0.01)


@pytest.mark.parametrize("metres", [-1, 5501, float("nan")])
def test_an_altitude_outside_the_range_is_an_error(metres: float) -> None:
    with pytest.raises(ValueError, match="altitude_metres"):
        boiling_point_celsius(metres)
