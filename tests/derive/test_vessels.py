"""What each vessel reaches at the clinic, against another program for air and one for steam."""

import pytest
from ambiance import Atmosphere
from iapws import iapws97

from basinside.derive.vessels import clinic_vessels, vessel_reach
from basinside.model.content import Content
from basinside.model.handbook import Vessel
from basinside.quantity import parse_quantity
from basinside.science.steam import gauge_pressure_kpa
from tests.derive.clinic import demo

ZERO_CELSIUS_KELVIN = 273.15
PASCALS_IN_MPA = 1e6


def elsewhere_celsius(gauge_kpa: float, altitude_metres: float) -> float:
    """Saturated steam: the standard atmosphere of ambiance, region 4 of iapws."""
    air = float(Atmosphere(altitude_metres).pressure[0])
    kelvin = iapws97._TSat_P((air + gauge_kpa * 1000) / PASCALS_IN_MPA)
    return float(kelvin) - ZERO_CELSIUS_KELVIN


def vessel(**regulator: str) -> Vessel:
    at = ("x", ())
    written: dict[str, object] = {"@": at, "vessel": "v", "kind": "gravity steam"}
    if regulator:
        written["regulator"] = {"@": at, "kind": "fixed weight", **regulator}
    return Vessel.model_validate(written)


def reached(found: Vessel, altitude: str) -> float | None:
    return vessel_reach(found, parse_quantity(altitude)).reached_celsius


def test_the_demonstrations_two_vessels() -> None:
    handbook = demo().handbook
    assert handbook is not None
    altitude = float(handbook.clinic.altitude.base)
    assert altitude == 2350
    adjustable, weight = clinic_vessels(demo())
    assert (adjustable.limit_kpa, weight.limit_kpa) == (150, 103)
    for each in (adjustable, weight):
        assert each.limit_kpa is not None
        expected = elsewhere_celsius(each.limit_kpa, altitude)
        assert each.reached_celsius == pytest.approx(expected, abs=0.01)
    assert (adjustable.reaches(121), weight.reaches(121)) == (True, False)


def test_the_gauge_that_a_temperature_asks_for_leads_back_to_it() -> None:
    for altitude in (0, 900, 2350, 5500):
        needed = gauge_pressure_kpa(121, altitude)
        assert elsewhere_celsius(needed, altitude) == pytest.approx(121, abs=0.01)


def test_the_demonstrations_gauge_is_enough_and_not_a_kilopascal_more_than_asked() -> None:
    handbook, written = demo().handbook, demo().figures["steam.gauge"].value
    assert handbook is not None
    asked = demo().figures["steam.temperature"].value
    needed = gauge_pressure_kpa(float(asked.base), float(handbook.clinic.altitude.base))
    assert 0 <= float(written.base / 1000) - needed <= 2


def test_what_lifts_first_decides() -> None:
    both = vessel(marked_working_pressure="150 kPa gauge", lifts_at="103 kPa gauge")
    assert reached(both, "2350 m") == reached(vessel(lifts_at="103 kPa gauge"), "2350 m")


@pytest.mark.parametrize("altitude", ["20000 ft", "5501 m", "9000 m"])
def test_outside_the_range_of_the_formulas_nothing_is_known(altitude: str) -> None:
    found = vessel_reach(vessel(lifts_at="103 kPa gauge"), parse_quantity(altitude))
    assert (found.limit_kpa, found.reached_celsius, found.reaches(121)) == (103, None, None)


def test_without_a_regulator_or_a_gauge_pressure_nothing_is_known() -> None:
    assert reached(vessel(), "0 m") is None
    absolute = vessel(lifts_at="203 kPa absolute")
    assert reached(absolute, "0 m") is None
    assert vessel_reach(absolute, parse_quantity("0 m")).limit_kpa is None


def test_no_handbook_no_vessels() -> None:
    assert clinic_vessels(Content()) == ()
