"""Air pressure against published and computed rows, and against another program."""

from __future__ import annotations

import ambiance
import pytest
from hypothesis import given
from hypothesis import strategies as st

from basinside.science.atmosphere import EARTH_RADIUS_METRES, pressure_kpa

ALTITUDES = st.floats(min_value=0, max_value=5500)

# Domain facts, sections 3.3 and 4, "C": ICAO standard atmosphere, geometric altitude.
COMPUTED_KPA = (
    (0, "101.325"),
    (500, "95.461"),
    (1000, "89.876"),
    (1500, "84.560"),
    (2000, "79.501"),
    (3000, "70.121"),
    (4000, "61.660"),
    (5000, "54.048"),
    (5500, "50.539"),
)
# The same section, "C": the same pressures for a height already given as geopotential.
GEOPOTENTIAL_KPA = ((3000, "70.109"), (5000, "54.020"))


@pytest.mark.parametrize(("metres", "kpa"), COMPUTED_KPA)
def test_pressure_is_the_tabled_one(metres: float, kpa: str) -> None:
    assert f"{pressure_kpa(metres):.3f}" == kpa


@pytest.mark.parametrize(("geopotential", "kpa"), GEOPOTENTIAL_KPA)
def test_a_geopotential_height_gives_the_other_column(geopotential: float, kpa: str) -> None:
    geometric = EARTH_RADIUS_METRES * geopotential / (EARTH_RADIUS_METRES - geopotential)
    assert f"{pressure_kpa(geometric):.3f}" == kpa


@given(ALTITUDES)
def test_pressure_agrees_with_ambiance(metres: float) -> None:
    other = float(ambiance.Atmosphere(metres).pressure[0]) / 1000
    assert pressure_kpa(metres) == pytest.approx(other, rel=1e-9)


@given(st.integers(min_value=0, max_value=5499))
def test_pressure_falls_with_height(metres: int) -> None:
    assert pressure_kpa(metres + 1) < pressure_kpa(metres)


@pytest.mark.parametrize("metres", [-0.1, 5500.1, 1e9, float("nan"), float("inf"), -float("inf")])
def test_an_altitude_outside_the_range_is_an_error(metres: float) -> None:
    with pytest.raises(ValueError, match="altitude_metres must be 0 to 5500"):
        pressure_kpa(metres)
