"""The demonstration's computed values, computed again by other programs and by plain arithmetic."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from ambiance import Atmosphere
from iapws import IAPWS97

from basinside.quantity import Quantity, parse_quantity
from tests.content.demo import clinic, content, printed, regulator, stock_strength

ZERO_CELSIUS_IN_KELVIN = 273.15
SEA_LEVEL_KPA = 101.325


def air_kpa() -> float:
    """The air's pressure at the clinic, by `ambiance` (ICAO standard atmosphere)."""
    altitude = clinic().altitude
    assert altitude is not None
    return float(Atmosphere(float(altitude.base)).pressure[0]) / 1000


def steam_kpa(celsius: float) -> float:
    return float(IAPWS97(T=celsius + ZERO_CELSIUS_IN_KELVIN, x=0).P) * 1000


def steam_celsius(kpa: float) -> float:
    return float(IAPWS97(P=kpa / 1000, x=0).T) - ZERO_CELSIUS_IN_KELVIN


def number(quantity: Quantity) -> float:
    return float(quantity.number)


def value_of(name: str) -> float:
    return number(content().figures[name].value)


def lifts_at_kpa() -> float:
    lifts_at = regulator("stovetop-weight").lifts_at
    assert lifts_at is not None
    return number(lifts_at)


def stock_millilitres() -> float:
    """The strong liquid for the whole bath, by the strengths and by the parts."""
    bath = content().figures["chlorine.bath-volume"].value.base
    strength = content().figures["chlorine.hld-strength"].value
    by_strength = bath * strength.number / stock_strength().number
    by_parts = bath / (content().figures["chlorine.water-parts"].value.number + 1)
    assert by_strength == by_parts
    return float(by_parts / parse_quantity("1 mL").base)


def gauge_kpa(air: float) -> float:
    return steam_kpa(value_of("steam.temperature")) - air


# How it is computed, which end of it the content prints, and how far that is rounded.
COMPUTED: dict[str, tuple[Callable[[], float], str, float]] = {
    "boil.point": (lambda: steam_celsius(air_kpa()), "at_most", 0.005),
    "steam.gauge": (lambda: gauge_kpa(air_kpa()), "at_least", 0.05),
    "steam.gauge-at-sea": (lambda: gauge_kpa(SEA_LEVEL_KPA), "at_least", 0.05),
    "steam.weight-here": (lambda: steam_celsius(air_kpa() + lifts_at_kpa()), "at_most", 0.05),
    "chlorine.stock-for-bath": (stock_millilitres, "exactly", 0.0),
}


def test_each_computed_value_is_computed_again_here() -> None:
    computed = {name for name, each in content().figures.items() if each.basis == "computed"}
    assert computed == set(COMPUTED)


@pytest.mark.parametrize("name", COMPUTED)
def test_computed_value_agrees_with_another_program(name: str) -> None:
    again, key, rounding = COMPUTED[name]
    figure = content().figures[name]
    said = number(printed(figure.source_says)[key])
    assert abs(said - again()) <= rounding
    # Rounded to the safe side: a gauge up, a temperature that is reached down.
    if key == "at_least":
        assert again() <= value_of(name) < again() + 2
    elif key == "at_most":
        assert again() - 1 < value_of(name) <= again()


def test_only_the_vessel_with_the_dial_reaches_the_temperature_here() -> None:
    reached = {}
    for vessel in clinic().vessels:
        held = regulator(vessel.vessel)
        highest = held.marked_working_pressure or held.lifts_at
        assert highest is not None
        at_most = steam_celsius(air_kpa() + number(highest))
        reached[vessel.vessel] = at_most >= value_of("steam.temperature")
    assert reached == {"stovetop-adjustable": True, "stovetop-weight": False}


def test_the_gauge_asked_for_stays_below_the_marked_pressure() -> None:
    marked = regulator("stovetop-adjustable").marked_working_pressure
    assert marked is not None
    assert value_of("steam.gauge") <= number(marked)


def test_published_amounts_for_chlorine_agree_with_one_another() -> None:
    litre = parse_quantity("1 L").base
    for amount, strength in (
        ("chlorine.stock-per-litre", "chlorine.hld-strength"),
        ("spill.stock-per-litre", "spill.strength"),
    ):
        share = content().figures[amount].value.base / litre
        assert share * stock_strength().number == content().figures[strength].value.number
