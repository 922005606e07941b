"""Saturated steam against the release's own check values, tabled rows and other programs."""

from __future__ import annotations

import ambiance
import CoolProp.CoolProp
import pytest
from hypothesis import given
from hypothesis import strategies as st
from iapws import iapws97

from basinside.quantity import parse_quantity
from basinside.science.atmosphere import pressure_kpa
from basinside.science.steam import (
    HIGHEST_CELSIUS,
    HIGHEST_KPA,
    LOWEST_CELSIUS,
    LOWEST_KPA,
    gauge_pressure_kpa,
    saturation_celsius,
    saturation_pressure_kpa,
    temperature_at_gauge,
)

KPA_IN_PSI = float(parse_quantity("1 psi gauge").base) / 1000
KPA_IN_KGF = float(parse_quantity("1 kgf/cm² gauge").base) / 1000
SEA_LEVEL = 0.0
FOOT_METRES = 0.3048
FAHRENHEIT_240 = (240 - 32) * 5 / 9

# IAPWS R7-97(2012), tables 35 (K, MPa) and 36 (MPa, K): nine figures each.
RELEASE_PRESSURES = ((300, 0.353658941e-2), (500, 0.263889776e1), (600, 0.123443146e2))
RELEASE_TEMPERATURES = ((0.1, 0.372755919e3), (1, 0.453035632e3), (10, 0.584149488e3))

# Domain facts, section 3.2, "C": °C, absolute kPa, gauge kPa at 101.325 kPa, gauge psi, kgf/cm².
SATURATED = (
    (100, "101.42", "0.09", "0.01", "0.00"),
    (110, "143.38", "42.05", "6.10", "0.43"),
    (115, "169.18", "67.85", "9.84", "0.69"),
    (116, "174.77", "73.44", "10.65", "0.75"),
    (118, "186.40", "85.08", "12.34", "0.87"),
    (120, "198.67", "97.34", "14.12", "0.99"),
    (121, "205.04", "103.71", "15.04", "1.06"),
    (121.1, "205.69", "104.36", "15.14", "1.06"),
    (121.11, "205.75", "104.43", "15.15", "1.06"),
    (124, "225.17", "123.84", "17.96", "1.26"),
    (126, "239.46", "138.13", "20.03", "1.41"),
    (130, "270.26", "168.93", "24.50", "1.72"),
    (132, "286.82", "185.50", "26.90", "1.89"),
    (133, "295.41", "194.08", "28.15", "1.98"),
    (134, "304.20", "202.87", "29.42", "2.07"),
    (135, "313.20", "211.88", "30.73", "2.16"),
    (137, "331.85", "230.53", "33.44", "2.35"),
    (138, "341.51", "240.18", "34.84", "2.45"),
)
# Section 3.3, "C": m, kPa of air; gauge kPa for 121.1, 132 and 134 °C; the same in psi; °C at
# 15 psi gauge and at 106 kPa gauge.
BY_ALTITUDE = (
    (0, "101.33", ("104.4", "185.5", "202.9"), ("15.14", "26.90", "29.42"), ("120.95", "121.35")),
    (500, "95.46", ("110.2", "191.4", "208.7"), ("15.99", "27.75", "30.27"), ("120.03", "120.44")),
    (1000, "89.88", ("115.8", "196.9", "214.3"), ("16.80", "28.56", "31.08"), ("119.14", "119.55")),
    (1500, "84.56", ("121.1", "202.3", "219.6"), ("17.57", "29.34", "31.86"), ("118.26", "118.69")),
    (2000, "79.50", ("126.2", "207.3", "224.7"), ("18.30", "30.07", "32.59"), ("117.41", "117.85")),
    (3000, "70.12", ("135.6", "216.7", "234.1"), ("19.66", "31.43", "33.95"), ("115.78", "116.24")),
    (4000, "61.66", ("144.0", "225.2", "242.5"), ("20.89", "32.66", "35.18"), ("114.25", "114.72")),
    (5000, "54.05", ("151.6", "232.8", "250.2"), ("21.99", "33.76", "36.28"), ("112.81", "113.31")),
)
# Section 3.3, "C": ft, psi of air pressure lost since sea level.
LOST_PSI = (
    (1000, "0.52"),
    (2000, "1.03"),
    (3000, "1.52"),
    (4000, "2.00"),
    (5000, "2.47"),
    (6000, "2.92"),
    (8000, "3.78"),
    (10_000, "4.59"),
)
# Section 3.3, "C": m around which 300 m cost this many kPa.
LOST_PER_300_METRES = ((0, 300, "3.55"), (1200, 1500, "3.16"), (2700, 3000, "2.71"))
# Section 3.3, [S44], "V": dial gauge lb/in² for 240 °F, half a pound more per 1,000 ft.
DIAL_RULE = tuple((1000 * step, 10 + step / 2) for step in range(11))
# Section 3.3, [S45], "V": dial gauge lb/in² up to an altitude in ft.
DIAL_STEPS = ((2000, 11), (4000, 12), (6000, 13), (8000, 14), (10_000, 15))

TEMPERATURES = st.floats(min_value=LOWEST_CELSIUS, max_value=HIGHEST_CELSIUS)
ALTITUDES = st.floats(min_value=0, max_value=5500)


@pytest.mark.parametrize(("kelvin", "mpa"), RELEASE_PRESSURES)
def test_pressure_is_the_release_check_value(kelvin: float, mpa: float) -> None:
    assert saturation_pressure_kpa(kelvin - 273.15) / 1000 == pytest.approx(mpa, rel=2e-9)


@pytest.mark.parametrize(("mpa", "kelvin"), RELEASE_TEMPERATURES)
def test_temperature_is_the_release_check_value(mpa: float, kelvin: float) -> None:
    assert saturation_celsius(mpa * 1000) + 273.15 == pytest.approx(kelvin, rel=2e-9)


@pytest.mark.parametrize(("celsius", "absolute", "gauge", "psi", "kgf"), SATURATED)
def test_saturated_steam_is_the_tabled_one(
    celsius: float, absolute: str, gauge: str, psi: str, kgf: str
) -> None:
    shown = gauge_pressure_kpa(celsius, SEA_LEVEL)
    assert f"{saturation_pressure_kpa(celsius):.2f}" == absolute
    assert f"{shown:.2f}" == gauge
    assert f"{shown / KPA_IN_PSI:.2f}" == psi
    assert f"{shown / KPA_IN_KGF:.2f}" == kgf


@pytest.mark.parametrize(("metres", "air", "gauge", "psi", "celsius"), BY_ALTITUDE)
def test_altitude_row_is_the_tabled_one(
    metres: float, air: str, gauge: tuple[str, ...], psi: tuple[str, ...], celsius: tuple[str, ...]
) -> None:
    needed = [gauge_pressure_kpa(wanted, metres) for wanted in (121.1, 132, 134)]
    reached = [temperature_at_gauge(kpa, metres) for kpa in (15 * KPA_IN_PSI, 106)]
    assert pressure_kpa(metres) == pytest.approx(float(air), abs=0.0051)
    assert tuple(f"{kpa:.1f}" for kpa in needed) == gauge
    assert tuple(f"{kpa / KPA_IN_PSI:.2f}" for kpa in needed) == psi
    assert tuple(f"{steam:.2f}" for steam in reached) == celsius


@pytest.mark.parametrize(("feet", "psi"), LOST_PSI)
def test_air_pressure_lost_is_the_tabled_one(feet: int, psi: str) -> None:
    lost = gauge_pressure_kpa(121, feet * FOOT_METRES) - gauge_pressure_kpa(121, SEA_LEVEL)
    assert f"{lost / KPA_IN_PSI:.2f}" == psi


@pytest.mark.parametrize(("low", "high", "kpa"), LOST_PER_300_METRES)
def test_300_metres_cost_the_tabled_pressure(low: int, high: int, kpa: str) -> None:
    lost = gauge_pressure_kpa(121, high) - gauge_pressure_kpa(121, low)
    assert lost == pytest.approx(float(kpa), abs=0.03)


@pytest.mark.parametrize(("feet", "psi"), DIAL_RULE)
def test_the_published_dial_rule_is_within_half_a_pound(feet: int, psi: float) -> None:
    needed = gauge_pressure_kpa(FAHRENHEIT_240, feet * FOOT_METRES) / KPA_IN_PSI
    assert abs(needed - psi) < 0.5


@pytest.mark.parametrize(("feet", "psi"), DIAL_STEPS)
def test_the_published_dial_steps_reach_the_heat_at_their_upper_end(feet: int, psi: int) -> None:
    reached = temperature_at_gauge(psi * KPA_IN_PSI, feet * FOOT_METRES)
    assert FAHRENHEIT_240 - 0.7 < reached < FAHRENHEIT_240 + 0.7


def test_the_two_printed_units_for_121_degrees_are_not_one_pressure() -> None:
    # Section 3.2, ST-20, "V": printed 121 °C = 15 lb/in² = 106 kPa.
    assert f"{gauge_pressure_kpa(121, SEA_LEVEL):.1f}" == "103.7"
    assert f"{106 / KPA_IN_PSI:.2f}" == "15.37"
    assert f"{15 * KPA_IN_PSI:.1f}" == "103.4"
    assert f"{temperature_at_gauge(106, SEA_LEVEL):.2f}" == "121.35"
    assert f"{temperature_at_gauge(15 * KPA_IN_PSI, SEA_LEVEL):.2f}" == "120.95"


def test_120_degrees_is_near_the_published_table() -> None:
    assert abs(saturation_pressure_kpa(120) - 198.5) < 0.2  # section 3.2, ST-24, "V"


def test_a_usual_cycle_is_in_the_published_band() -> None:
    # Section 3.2, ST-27, "V": 121 °C at 15 to 17 psi gauge, 103 to 117 kPa.
    assert 103 <= gauge_pressure_kpa(121, SEA_LEVEL) <= 117
    assert 15 <= gauge_pressure_kpa(121, SEA_LEVEL) / KPA_IN_PSI <= 17


@given(TEMPERATURES)
def test_pressure_agrees_with_iapws(celsius: float) -> None:
    other = iapws97._PSat_T(celsius + 273.15) * 1000
    assert saturation_pressure_kpa(celsius) == pytest.approx(other, rel=1e-9)


@given(st.floats(min_value=0.6113, max_value=22_063.9))
def test_temperature_agrees_with_iapws(kpa: float) -> None:
    other = iapws97._TSat_P(kpa / 1000) - 273.15
    assert saturation_celsius(kpa) == pytest.approx(other, abs=1e-7)


@given(st.floats(min_value=60, max_value=373), ALTITUDES)
def test_gauge_agrees_with_other_programs(celsius: float, metres: float) -> None:
    air = float(ambiance.Atmosphere(metres).pressure[0]) / 1000
    shown = iapws97._PSat_T(celsius + 273.15) * 1000 - air
    assert gauge_pressure_kpa(celsius, metres) == pytest.approx(shown, rel=1e-9, abs=1e-6)
    assert temperature_at_gauge(shown, metres) == pytest.approx(celsius, abs=1e-4)


@given(st.floats(min_value=0.02, max_value=373))
def test_pressure_agrees_with_the_scientific_formulation(celsius: float) -> None:
    other = CoolProp.CoolProp.PropsSI("P", "T", celsius + 273.15, "Q", 1, "Water") / 1000
    assert saturation_pressure_kpa(celsius) == pytest.approx(other, rel=5e-4)


@given(st.floats(min_value=100, max_value=138))
def test_pressure_agrees_closely_in_the_range_of_the_trade(celsius: float) -> None:
    # Section 3.2, heading: IAPWS-95 agrees within 0.03 kPa (measured here: 0.032 at the most).
    other = CoolProp.CoolProp.PropsSI("P", "T", celsius + 273.15, "Q", 1, "Water") / 1000
    assert saturation_pressure_kpa(celsius) == pytest.approx(other, abs=0.035)


@given(TEMPERATURES)
def test_temperature_undoes_pressure(celsius: float) -> None:
    assert saturation_celsius(saturation_pressure_kpa(celsius)) == pytest.approx(celsius, abs=3e-5)


@given(st.floats(min_value=60, max_value=140), ALTITUDES)
def test_temperature_at_gauge_undoes_gauge_pressure(celsius: float, metres: float) -> None:
    shown = gauge_pressure_kpa(celsius, metres)
    assert temperature_at_gauge(shown, metres) == pytest.approx(celsius, abs=1e-5)


@given(st.floats(min_value=50, max_value=250), ALTITUDES, st.floats(min_value=0.01, max_value=0.9))
def test_air_makes_it_cooler_than_the_gauge_says(gauge: float, metres: float, air: float) -> None:
    with_air = temperature_at_gauge(gauge, metres, air)
    assert with_air < temperature_at_gauge(gauge, metres)
    steam = (gauge + pressure_kpa(metres)) * (1 - air)
    assert saturation_pressure_kpa(with_air) == pytest.approx(steam, rel=1e-6)


@pytest.mark.parametrize("celsius", [-0.01, 373.95, float("nan"), float("inf")])
def test_a_temperature_outside_the_range_is_an_error(celsius: float) -> None:
    with pytest.raises(ValueError, match="celsius must be"):
        saturation_pressure_kpa(celsius)
    with pytest.raises(ValueError, match="celsius must be"):
        gauge_pressure_kpa(celsius, 0)


@pytest.mark.parametrize("kpa", [0, -5, LOWEST_KPA * 0.9999, HIGHEST_KPA + 1, float("nan")])
def test_a_pressure_outside_the_range_is_an_error(kpa: float) -> None:
    with pytest.raises(ValueError, match="kpa must be"):
        saturation_celsius(kpa)


@pytest.mark.parametrize(
    ("gauge", "metres", "air", "named"),
    [
        (103, -1, 0, "altitude_metres"),
        (103, 5501, 0, "altitude_metres"),
        (103, 0, -0.1, "air_fraction"),
        (103, 0, 1, "air_fraction"),
        (103, 0, float("nan"), "air_fraction"),
        (-101.325, 0, 0, "kpa"),
        (1e6, 0, 0, "kpa"),
    ],
)
def test_a_gauge_question_outside_the_range_is_an_error(
    gauge: float, metres: float, air: float, named: str
) -> None:
    with pytest.raises(ValueError, match=f"^{named} must be"):
        temperature_at_gauge(gauge, metres, air)
