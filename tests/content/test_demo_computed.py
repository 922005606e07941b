"""The demonstration's computed values, computed again by other programs and by plain arithmetic."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

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


def agent_strength(agent: str) -> Fraction:
    product = content().agents[agent].product
    assert product is not None
    assert product.strength is not None
    return product.strength.number


def powder_grams(litres: float, wanted: str) -> float:
    """The published formula: (wanted % / active %) x 1000 g a litre (CDC, appendix E)."""
    wanted_percent = float(content().figures[wanted].value.number)
    return litres * 1000 * wanted_percent / float(agent_strength("hypochlorite-powder"))


def bath_litres() -> float:
    return float(content().figures["chlorine.bath-volume"].value.base / parse_quantity("1 L").base)


def powder_percent(grams: str, litres: float) -> float:
    return value_of(grams) * float(agent_strength("hypochlorite-powder")) / (litres * 1000)


def tablet_percent(tablets: str) -> float:
    """Grams of available chlorine in 100 mL of one litre."""
    return value_of(tablets) * value_of("tablets.available") / 10


def wiping_millilitres() -> float:
    """The strong liquid in a litre, by the published parts of water: (stock / wanted) - 1."""
    parts_of_water = float(stock_strength().number) / value_of("wipe.strength") - 1
    return 1000 / (parts_of_water + 1)


def gauge_kpa(air: float) -> float:
    return steam_kpa(value_of("steam.temperature")) - air


# How it is computed, which end of it the content prints, and how far that is rounded.
COMPUTED: dict[str, tuple[Callable[[], float], str, float]] = {
    "boil.point": (lambda: steam_celsius(air_kpa()), "at_most", 0.005),
    "steam.gauge": (lambda: gauge_kpa(air_kpa()), "at_least", 0.05),
    "steam.gauge-at-sea": (lambda: gauge_kpa(SEA_LEVEL_KPA), "at_least", 0.05),
    "steam.weight-here": (lambda: steam_celsius(air_kpa() + lifts_at_kpa()), "at_most", 0.05),
    "chlorine.stock-for-bath": (stock_millilitres, "exactly", 0.0),
    "wipe.stock-per-litre": (wiping_millilitres, "exactly", 1e-9),
    "powder.grams-per-litre": (
        lambda: powder_grams(1, "chlorine.hld-strength"),
        "at_least",
        0.005,
    ),
    "powder.for-bath": (
        lambda: powder_grams(bath_litres(), "chlorine.hld-strength"),
        "at_least",
        0.005,
    ),
    "powder.spill-grams-per-litre": (lambda: powder_grams(1, "spill.strength"), "at_least", 0.005),
    "powder.true-strength": (
        lambda: powder_percent("powder.for-bath", bath_litres()),
        "exactly",
        1e-9,
    ),
    "powder.spill-true-strength": (
        lambda: powder_percent("powder.spill-grams-per-litre", 1),
        "exactly",
        1e-9,
    ),
    "tablets.true-strength": (lambda: tablet_percent("tablets.per-litre"), "exactly", 1e-9),
    "tablets.spill-true-strength": (lambda: tablet_percent("tablets.for-spill"), "exactly", 1e-9),
    "tablets.for-bath": (
        lambda: bath_litres() * value_of("tablets.per-litre"),
        "exactly",
        1e-9,
    ),
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


@pytest.mark.parametrize(
    ("true", "wanted"),
    [
        ("powder.true-strength", "chlorine.hld-strength"),
        ("tablets.true-strength", "chlorine.hld-strength"),
        ("powder.spill-true-strength", "spill.strength"),
        ("tablets.spill-true-strength", "spill.strength"),
    ],
)
def test_what_is_rounded_is_never_weaker_than_asked_for(true: str, wanted: str) -> None:
    assert value_of(wanted) < value_of(true)


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
        ("wipe.stock-per-litre", "wipe.strength"),
    ):
        share = content().figures[amount].value.base / litre
        assert share * stock_strength().number == content().figures[strength].value.number
