"""A typed number is read exactly, in any unit of its kind, with either decimal mark, or refused."""

import json
import random
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from basinside.units import UNITS, Kind, typed_units
from tests.browser import script_lab
from tests.conftest import Opener

pytestmark = pytest.mark.browser

READ = """text => JSON.stringify(JSON.parse(text).map(
  ([typed, asked]) => Basinside.typedNumber.read(typed, asked)))"""


def asked(unit: str) -> dict[str, Any]:
    worth = {k: [str(v.numerator), str(v.denominator)] for k, v in typed_units(unit).items()}
    return {"unit": [UNITS[unit].one, UNITS[unit].many], "units": worth}


def read(tmp_path: Path, open_page: Opener, pairs: list[tuple[str, str]]) -> list[Any]:
    folder = script_lab.lay(tmp_path, {"a.html": ("", {})})
    given = json.dumps([(typed, asked(unit)) for typed, unit in pairs])
    told: list[Any] = json.loads(open_page(folder / "a.html").evaluate(READ, given))
    return told


def test_what_people_write(tmp_path: Path, open_page: Opener) -> None:
    wanted = {
        ("0,5", "% available chlorine"): "0.5",
        ("0.5", "% available chlorine"): "0.5",
        (" .5 % ", "% available chlorine"): "0.5",
        ("5000 ppm", "% available chlorine"): "0.5",
        ("5 000 ppm", "% available chlorine"): "0.5",
        ("0,5 per cent", "ppm available chlorine"): "5000",
        ("100", "mL"): "100",
        ("100,", "mL"): "100",
        ("0,1 L", "mL"): "100",
        ("0.1L", "mL"): "100",
        ("0.1 litres", "mL"): "100",
        ("1 h 40 min", "min"): "100",
        ("1h40min", "min"): "100",
        ("20 min", "h"): "0.333333333333",
        ("2 weeks", "day"): "14",
        ("4 tablets", "tablet"): "4",
        ("1.3 bar", "kPa gauge"): "130",
        ("1 kgf/cm2", "kPa gauge"): "98.0665",
        ("\u22125,5 \u00b0C", "°C"): "-5.5",
        ("-0", "°C"): "0",
    }
    told = read(tmp_path, open_page, list(wanted))
    assert {pair: each.get("number", each) for pair, each in zip(wanted, told, strict=True)} == (
        wanted
    )


def test_what_can_be_read_in_two_ways_or_in_none_is_asked_again(
    tmp_path: Path, open_page: Opener
) -> None:
    wanted = {
        ("", "mL"): "number-none",
        ("mL", "mL"): "number-none",
        ("about 5", "mL"): "number-none",
        (".", "mL"): "number-none",
        ("1.2.3", "mL"): "number-none",
        ("1,000.5", "mL"): "number-none",
        ("10 20", "mL"): "number-none",
        ("1 h 40", "h"): "number-none",
        ("1e3", "mL"): "number-unit",
        ("1,000", "mL"): "number-mark",
        ("1.500 L", "mL"): "number-mark",
        ("100 g", "mL"): "number-unit",
        ("5 spoons", "tablet"): "number-unit",
        ("5 constructor", "tablet"): "number-unit",
        ("5 x", "count"): "number-bare",
        ("1234567890123", "mL"): "number-long",
        ("999999999999 L", "mL"): "number-long",
        ("0.1234567890123", "mL"): "number-long",
    }
    told = read(tmp_path, open_page, list(wanted))
    said = {pair: each.get("key") for pair, each in zip(wanted, told, strict=True)}
    assert said == {pair: f"self-test.{key}" for pair, key in wanted.items()}
    two_ways = told[list(wanted).index(("1.500 L", "mL"))]
    assert two_ways["holes"] == {"whole": "1500", "part": "1.5"}


def test_numbers_and_units_agree_with_fractions(tmp_path: Path, open_page: Opener) -> None:
    rng = random.Random(20261125)
    units = [name for name, unit in UNITS.items() if not unit.steps and unit.kind is not Kind.COUNT]
    pairs: list[tuple[str, str]] = []
    wanted: list[str] = []
    while len(pairs) < 5_000:
        unit = rng.choice(units)
        name, worth = rng.choice([("", Fraction(1)), *typed_units(unit).items()])
        whole, places = str(rng.randrange(10 ** rng.randint(1, 6))), rng.choice([0, 1, 2, 4, 6])
        part = "".join(rng.choice("0123456789") for _ in range(places))
        number = Fraction(f"{whole}.{part}" if part else whole) * worth
        if number >= 10**12:
            continue
        typed = f"{whole}{rng.choice('.,')}{part}" if part else whole
        pairs.append((f"{typed}{rng.choice(['', ' ', '  '])}{name}", unit))
        wanted.append(rounded(number))
    told = read(tmp_path, open_page, pairs)
    found = [each.get("number") for each in told]
    wrong = [(pair, w, f) for pair, w, f in zip(pairs, wanted, found, strict=True) if w != f]
    assert wrong == []
    assert len({unit for _, unit in pairs}) == len(units)


def rounded(number: Fraction) -> str:
    """Return a decimal of twelve places, halves up, without noughts at its end."""
    scaled = (number * 10**12 + Fraction(1, 2)).__floor__()
    text = format(Decimal(scaled).scaleb(-12), "f")
    return text.rstrip("0").rstrip(".") if "." in text else text
