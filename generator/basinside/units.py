"""The table of units: what each measures, what it is worth, and how it may be written."""

from __future__ import annotations

from enum import StrEnum
from fractions import Fraction
from types import MappingProxyType
from typing import NamedTuple

# Pressure units in Pa. NIST SP 811, 2008, B.8: lbf = 4.448 221 615 260 5 N, in = 0.0254 m,
# kgf = 9.806 65 N, all exact. Foot: the same table, 0.3048 m, exact.
PSI_PASCALS = Fraction("4.4482216152605") / Fraction("0.0254") ** 2
KGF_PER_CM2_PASCALS = Fraction("98066.5")
FOOT_METRES = Fraction("0.3048")
PPM_IN_PERCENT = 10_000


class Kind(StrEnum):
    """What is measured; only amounts of one kind can be compared."""

    TIME = "time"
    DAYS = "civil days"
    MONTHS = "civil months"
    TEMPERATURE = "temperature"
    GAUGE = "gauge pressure"
    ABSOLUTE = "absolute pressure"
    CHLORINE = "chlorine strength"
    WEIGHT_IN_VOLUME = "w/v"
    WEIGHT_IN_WEIGHT = "w/w"
    LENGTH = "length"
    VOLUME = "volume"
    MASS = "mass"
    AIR = "strength in air"
    HUMIDITY = "humidity"
    COUNT = "count"


BASE_UNITS = MappingProxyType(
    {
        Kind.TIME: "s",
        Kind.DAYS: "day",
        Kind.MONTHS: "month",
        Kind.TEMPERATURE: "°C",
        Kind.GAUGE: "Pa gauge",
        Kind.ABSOLUTE: "Pa absolute",
        Kind.CHLORINE: "ppm available chlorine",
        Kind.WEIGHT_IN_VOLUME: "% w/v",
        Kind.WEIGHT_IN_WEIGHT: "% w/w",
        Kind.LENGTH: "m",
        Kind.VOLUME: "mL",
        Kind.MASS: "g",
        Kind.AIR: "ppm in air",
        Kind.HUMIDITY: "% relative humidity",
        Kind.COUNT: "count",
    }
)


class Unit(NamedTuple):
    """One unit: its kind, how many base units it is worth, and how it is read beside a number.

    `steps` are the units of a time read in several, largest first; its number counts the last.
    """

    kind: Kind
    factor: Fraction
    one: str
    many: str
    steps: tuple[str, ...] = ()


COUNTED = (  # what a count may be of: one, many
    ("use", "uses"),
    ("part", "parts"),
    ("piece", "pieces"),
    ("time", "times"),
    ("cycle", "cycles"),
    ("run", "runs"),
    ("case", "cases"),
    ("release", "releases"),
    ("load", "loads"),
    ("item", "items"),
    ("set", "sets"),
    ("pack", "packs"),
    ("tablet", "tablets"),
    ("sachet", "sachets"),
    ("scoop", "scoops"),
    ("spoon", "spoons"),
    ("drop", "drops"),
    ("strip", "strips"),
    ("layer", "layers"),
    ("rinse", "rinses"),
    ("stroke", "strokes"),
    ("reading", "readings"),
    ("person", "people"),
)


def _units() -> dict[str, Unit]:
    def plain(name: str, kind: Kind, factor: Fraction | int) -> tuple[str, Unit]:
        return name, Unit(kind, Fraction(factor), name, name)

    table = dict(
        (
            plain("s", Kind.TIME, 1),
            plain("min", Kind.TIME, 60),
            plain("h", Kind.TIME, 3600),
            plain("°C", Kind.TEMPERATURE, 1),
            plain("% available chlorine", Kind.CHLORINE, PPM_IN_PERCENT),
            plain("ppm available chlorine", Kind.CHLORINE, 1),
            plain("% w/v", Kind.WEIGHT_IN_VOLUME, 1),
            plain("% w/w", Kind.WEIGHT_IN_WEIGHT, 1),
            plain("ppm in air", Kind.AIR, 1),
            plain("% relative humidity", Kind.HUMIDITY, 1),
            plain("m", Kind.LENGTH, 1),
            plain("ft", Kind.LENGTH, FOOT_METRES),
            plain("mL", Kind.VOLUME, 1),
            plain("L", Kind.VOLUME, 1000),
            plain("g", Kind.MASS, 1),
            plain("kg", Kind.MASS, 1000),
        )
    )
    for name, factor in (
        ("Pa", Fraction(1)),
        ("kPa", Fraction(1000)),
        ("bar", Fraction(100_000)),
        ("psi", PSI_PASCALS),
        ("kgf/cm²", KGF_PER_CM2_PASCALS),
    ):
        table.update(
            (
                plain(f"{name} gauge", Kind.GAUGE, factor),
                plain(f"{name} absolute", Kind.ABSOLUTE, factor),
            )
        )
    for name, kind, days_or_months in (
        ("day", Kind.DAYS, 1),
        ("week", Kind.DAYS, 7),
        ("month", Kind.MONTHS, 1),
        ("year", Kind.MONTHS, 12),
    ):
        table[name] = Unit(kind, Fraction(days_or_months), name, f"{name}s")
    for steps in (("h", "min"), ("min", "s"), ("h", "min", "s")):
        name = " ".join(steps)
        table[name] = Unit(Kind.TIME, table[steps[-1]].factor, name, name, steps)
    for one, many in COUNTED:
        table[one] = Unit(Kind.COUNT, Fraction(1), one, many)
    table["count"] = Unit(Kind.COUNT, Fraction(1), "", "")
    return table


UNITS = MappingProxyType(_units())


def _spellings() -> dict[str, str]:
    spelled = {name: name for name in UNITS}
    spelled.update({unit.many: name for name, unit in UNITS.items() if unit.many})
    spelled.update(
        {
            "C": "°C",
            "ºC": "°C",
            "℃": "°C",
            "second": "s",
            "seconds": "s",
            "minute": "min",
            "minutes": "min",
            "hour": "h",
            "hours": "h",
        }
    )
    spelled.update({name.replace("²", "2"): name for name in UNITS if "²" in name})
    return spelled


SPELLINGS = MappingProxyType(_spellings())  # every way a unit may be written -> its one name
WRITABLE = MappingProxyType(
    {  # what a value may be written in: several steps and "count" may not
        spelling: name
        for spelling, name in SPELLINGS.items()
        if name != "count" and not UNITS[name].steps
    }
)

TAILS = (  # what a unit's kind says already
    " available chlorine",
    " gauge",
    " absolute",
    " w/v",
    " w/w",
    " in air",
    " relative humidity",
)
SPOKEN = MappingProxyType(  # how people write a unit in an answer, and authors do not
    {
        "sec": "s",
        "secs": "s",
        "mins": "min",
        "hr": "h",
        "hrs": "h",
        "millilitre": "mL",
        "millilitres": "mL",
        "litre": "L",
        "litres": "L",
        "gram": "g",
        "grams": "g",
        "kilogram": "kg",
        "kilograms": "kg",
        "metre": "m",
        "metres": "m",
        "foot": "ft",
        "feet": "ft",
        "percent": "%",
        "per cent": "%",
    }
)


def typed_units(unit: str) -> dict[str, Fraction]:
    """Return how the unit of an answer may be typed, and how many of `unit` each is worth.

    `unit` is a name in `UNITS` without steps. Spellings are in small letters; what the kind says
    already may be left out (`%` for a chlorine strength). A count is of its own thing only.
    """
    own = UNITS[unit]
    if own.kind is Kind.COUNT:
        return {name: Fraction(1) for name in (own.one, own.many) if name}
    worth = {
        spelling: UNITS[name].factor / own.factor
        for spelling, name in WRITABLE.items()
        if UNITS[name].kind is own.kind
    }
    for tail in TAILS:
        short = {name.removesuffix(tail): each for name, each in worth.items() if tail in name}
        worth = {**short, **worth}
    spoken = {name: worth[short] for name, short in SPOKEN.items() if short in worth}
    return {name.lower(): each for name, each in {**spoken, **worth}.items()}
