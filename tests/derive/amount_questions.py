"""Questions to the calculators: published ones, and random ones that can be asked again."""

import random
from datetime import date, timedelta
from functools import cache

from basinside.derive.amounts.heights import heights
from basinside.model.amounts import (
    AMOUNT_KINDS,
    AmountKind,
    Ground,
    OwnHold,
    OwnLife,
    OwnMeasure,
    OwnVessel,
    Typed,
)

EACH = 500
RNG_START = 20261125

GROUND = Ground(
    altitude="2350",
    liquid="5",
    powder="70",
    tablet_grams="1.5",
    bath_litres="5",
    boil_minutes="20",
    enough_celsius="80",
    steam_celsius="121",
    steam_minutes="30",
    strengths=(),
    measures=(
        OwnMeasure(name="jug", holds="1000", marks="50"),
        OwnMeasure(name="syringe", holds="10", marks="1"),
        OwnMeasure(name="spoon", holds="5"),
        OwnMeasure(name="cup", holds="2.5", marks="0.5", by_weight=True),
    ),
    vessels=(
        OwnVessel(vessel="dial", name="a dial", kind="gravity steam", limit="150", weight=False),
        OwnVessel(vessel="weight", name="a weight", kind="gravity steam", limit="103", weight=True),
        OwnVessel(vessel="oven", name="an oven", kind="dry heat oven", limit="", weight=False),
        OwnVessel(vessel="bare", name="no plate", kind="gravity steam", limit="", weight=False),
    ),
    holds=(
        OwnHold(figure="boil.hold", name="boiling", seconds=1200, longest=None),
        OwnHold(figure="bath.hold", name="bath", seconds=750, longest=1830),
        OwnHold(figure="night.hold", name="night", seconds=36_000, longest=172_800),
    ),
    lives=(
        OwnLife(agent="chlorine", name="chlorine", number=1, unit="day"),
        OwnLife(agent="drum", name="drum", number=6, unit="month"),
    ),
    sets=(),
    heights=heights(),
)
"""A clinic with something of everything; its cup is by weight, so that powder is poured too."""

# What people type: sound, in other marks, and hostile.
ODD = (
    "", " ", "0", "-0", "-5", "−3", "1e999", "1e3", "NaN", "Infinity", "0x10", "+5", "5 %", "½",
    "٣٫٥", "५", "1,000", "1,5", "0,125", "12,345", "1.000", ".5", "5.", "1..2", "1,2,3",
    "9" * 41, "9" * 400, "0.000000000001", "1234567", "000000000000005", "5\u00a0", "\t7\n", "５",
    "1 000", "'; drop", "<b>5</b>", "\u202e5", "5\u0000", "null", "😀" * 30,
)  # fmt: skip


def _number(rng: random.Random, low: float, high: float) -> str:
    if rng.random() < 0.06:
        return rng.choice(ODD)
    value = rng.uniform(low, high) if rng.random() < 0.7 else rng.choice([low, high])
    text = f"{value:.{rng.choice([0, 0, 1, 2, 3])}f}"
    if "." in text and rng.random() < 0.15:
        return text.replace(".", ",")
    return f" {text} " if rng.random() < 0.05 else text


def _one(rng: random.Random, *words: str) -> str:
    return (
        rng.choice(words) if rng.random() > 0.02 else rng.choice(["", "L ", "other2", "__proto__"])
    )


def _made(rng: random.Random, most: float) -> Typed:
    unit = _one(rng, "L", "L", "mL")
    return {
        "wanted": rng.choice(["0.1", "0.05", "0.5", "1", "0,2", _number(rng, 0.01, most)]),
        "volume": rng.choice(
            ["1", "5", "7", _number(rng, 0.01, 30)]
            if unit == "L"
            else ["500", "1000", _number(rng, 10, 5000)]
        ),
        "unit": unit,
    }


def _liquid(rng: random.Random) -> Typed:
    label = _one(rng, "available", "degrees", "hypochlorite")
    strength = _number(rng, 1, 60) if label == "degrees" else _number(rng, 0.1, 15)
    usual = rng.choice(["3.5", "5", "5.25", "2.4", "8", "12"])
    return {"label": label, "strength": rng.choice([strength, usual]), **_made(rng, 6)}


def _powder(rng: random.Random) -> Typed:
    return {"strength": rng.choice(["35", "70", "60", _number(rng, 1, 100)]), **_made(rng, 20)}


def _tablets(rng: random.Random) -> Typed:
    return {"grams": rng.choice(["1", "1.5", "2.5", _number(rng, 0.01, 20)]), **_made(rng, 5)}


def _boiling(rng: random.Random) -> Typed:
    return {"altitude": _number(rng, 0, 5600)}


def _gauge(rng: random.Random) -> Typed:
    unit = _one(rng, "kPa", "bar", "psi", "kgf/cm²")
    most = {"kPa": 400, "psi": 60}.get(unit, 4)
    return {
        "vessel": _one(rng, *["other"] * 8, *["dial"] * 4, "weight", "oven", "bare"),
        "mark": _number(rng, most / 10, most),
        "unit": unit,
        "temperature": rng.choice(
            ["121", "121", "126", "134", str(rng.randint(98, 140)), _number(rng, 100, 138)]
        ),
        "altitude": _number(rng, 0, 5500),
    }


def _day(rng: random.Random) -> str:
    if rng.random() < 0.06:
        return rng.choice(
            ["2027-02-29", "2028-02-29", "2026-13-01", "1999-12-31", "2101-01-01", "1.2.2026",
             "2026-1-1", "0000-00-00", "2026-11-31", "x", ""]
        )  # fmt: skip
    start = date(2026, 1, 1)
    return (start + timedelta(days=rng.randint(0, 1500))).isoformat()


def _out_time(rng: random.Random) -> Typed:
    hour, minute = rng.randint(0, 24), rng.choice([0, 1, 30, 59, 60])
    return {
        "start": f"{_day(rng)}{rng.choice(['T', ' '])}{hour:02}:{minute:02}",
        "hold": _one(rng, "other", "other", "boil.hold", "bath.hold", "night.hold"),
        "time": _number(rng, 1, 3000),
        "unit": _one(rng, "min", "min", "h"),
    }


def _discard(rng: random.Random) -> Typed:
    made = _day(rng)
    return {
        "made": made,
        "product": _one(rng, "other", "other", "chlorine", "drum"),
        "life": rng.choice([str(rng.randint(1, 30)), _number(rng, 1, 30)]),
        "unit": _one(rng, "day", "week", "month"),
        "strip": rng.choice(["", "", made, _day(rng)]),
        "cloudy": rng.choice(["", "", made, _day(rng)]),
    }


def _load(rng: random.Random) -> Typed:
    clock = rng.random() < 0.4
    minute, hot = rng.randint(0, 1300) if clock else 0, rng.choice([121, 121, 134])
    lines = []
    for _ in range(rng.randint(1, 14)):
        warm = rng.choice([hot, hot + 0.4, hot - 0.05, hot - 1, 100, rng.uniform(hot - 9, hot + 4)])
        time = f"{minute // 60 % 24:02}:{minute % 60:02}" if clock else f"{minute / 10:g}"
        lines.append(f"{time} {warm:.{rng.choice([0, 1, 2])}f}")
        minute += rng.choice([1, 2, 5, 10, 15, 30])
    if rng.random() < 0.12:
        lines.insert(
            rng.randrange(len(lines) + 1),
            rng.choice(["", "5", "a b", "3 121", "14:05 121", "1 2 3", "7 121,35", "9 300", "9 1e9",
                        "8 121.123", "2000 121"]),
        )  # fmt: skip
    return {
        "log": rng.choice(["\n", "\r\n", "; "]).join(lines),
        "temperature": rng.choice([str(hot), _number(rng, 100, 140)]),
        "minutes": rng.choice(["1", "3", "15", "30", _number(rng, 1, 60)]),
    }


def _sets(rng: random.Random) -> Typed:
    return {
        "cases": _number(rng, 0, 40),
        "turnaround": _number(rng, 1, 400),
        "unit": _one(rng, "min", "min", "h"),
        "hours": _number(rng, 1, 24),
        "reserve": rng.choice(["0", "1", "2", str(rng.randint(0, 9)), _number(rng, 0, 5)]),
    }


MAKERS = {
    "liquid": _liquid,
    "powder": _powder,
    "tablets": _tablets,
    "boiling": _boiling,
    "gauge": _gauge,
    "out-time": _out_time,
    "discard": _discard,
    "load": _load,
    "sets": _sets,
}


def _amount(wanted: str, volume: str = "1") -> Typed:
    return {"wanted": wanted, "volume": volume, "unit": "L"}


# (kind, typed, the first number, the true strength or ''), with where it is printed.
PUBLISHED: tuple[tuple[AmountKind, Typed, str, str], ...] = (
    # WHO laboratory manual, table 12: 20 and 100 mL of 5 % in a litre.
    ("liquid", {"label": "available", "strength": "5", **_amount("0.1")}, "20", "0.1"),
    ("liquid", {"label": "available", "strength": "5", **_amount("0.5")}, "100", "0.5"),
    # CDC, appendix E, examples 1 and 3: 3.5 % with 6 parts of water, 5 % with 49.
    ("liquid", {"label": "available", "strength": "3.5", **_amount("0.5", "7")}, "1000", "0.5"),
    ("liquid", {"label": "available", "strength": "5", **_amount("0.1", "5")}, "100", "0.1"),
    # CDC, appendix E, footnote 2: 8 degrees are 2.4 %.
    ("liquid", {"label": "degrees", "strength": "8", **_amount("0.5", "24")}, "5000", "0.5"),
    # 5.25 % sodium hypochlorite is 5.00 % available chlorine (70.906 / 74.442).
    ("liquid", {"label": "hypochlorite", "strength": "5.25", **_amount("0.1")}, "20", "0.1"),
    # CDC, appendix E, example 2: 14.3 g of 35 % in a litre; in whole grams 15, poured by a cup.
    ("powder", {"strength": "35", **_amount("0.5")}, "15", "0.507"),
    # WHO laboratory manual, table 12: 1 and 4 tablets of 1.5 g.
    ("tablets", {"grams": "1.5", **_amount("0.1")}, "1", "0.15"),
    ("tablets", {"grams": "1.5", **_amount("0.5")}, "4", "0.6"),
    # IARC reference manual, p. 130: 20 minutes at every altitude up to 5,500 m.
    ("boiling", {"altitude": "5500"}, "20", ""),
    # Trace A of the steam tests: from 121 to 121.1 for 20 of its minutes, and so not for 30.
    (
        "load",
        {
            "log": "0 20\n2 60\n4 90\n6 105\n8 115\n9 119\n10 121\n15 121.3\n20 121.4\n25 121.2\n"
            "30 121.1\n31 118\n33 108\n35 95\n40 70",
            "temperature": "121",
            "minutes": "20",
        },
        "",
        "",
    ),
)


@cache
def questions() -> tuple[tuple[AmountKind, Typed], ...]:
    """Return the published questions, then so many random ones of each kind; not to be changed."""
    rng = random.Random(RNG_START)
    asked = [(kind, typed) for kind, typed, _number, _strength in PUBLISHED]
    for kind in AMOUNT_KINDS:
        asked += [(kind, MAKERS[kind](rng)) for _ in range(EACH)]
    return tuple(asked)
