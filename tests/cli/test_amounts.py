"""The calculators at the prompt: the clinic's own values, refusals, and what goes out."""

import json
from pathlib import Path

import pytest

from basinside.model.amounts import AMOUNT_KINDS
from tests.built import CHECKOUT
from tests.cli.run import Ran, basinside

LOG = "14:00 100\n14:10 121\n14:40 121\n14:45 100\n"


def amount(kind: str, *arguments: object, typed: str | None = None) -> Ran:
    return basinside("amount", kind, "--folder", CHECKOUT, *arguments, typed=typed)


def test_what_is_left_out_is_the_clinics_own() -> None:
    told = amount("liquid")
    assert told.code == 0
    assert told.lines[0] == "100 mL from the bottle of 5 % available chlorine"
    assert "  1 × jug, filled to 100 mL" in told.lines
    assert "  100 mL = 5 L × 0.1 % ÷ 5 %" in told.lines
    assert "  Never with acid, ammonia or soap: they set poisonous gas free." in told.lines


@pytest.mark.parametrize(
    ("arguments", "first"),
    [
        (["powder"], "8 g of powder with 70 % available chlorine"),
        (["tablets"], "5 tablets in 5 L of water"),
        (["tablets", "--volume", "500mL"], "1 tablet in 500 mL of water"),
        (["liquid", "--degrees", "8", "--volume", "1 L"], "50 mL from the bottle of 2.4 %"),
        (["liquid", "--hypochlorite", "5,25"], "100 mL from the bottle of 5 %"),
        (["boiling"], "20 min at a rolling boil"),
        (["gauge", "--vessel", "stovetop-adjustable"], "130 kPa gauge or more, for 121 °C"),
        (["gauge", "--mark", "20psi"], "130 kPa gauge or more, for 121 °C"),
        (
            ["out-time", "--of", "chlorine.hold", "--start", "2026-11-20 23:50"],
            "00:10 is when it is out: the next day, 21 November 2026",
        ),
        (
            ["discard", "--of", "glutaraldehyde", "--made", "2026-11-20"],
            "4 December 2026 is the day to throw it away",
        ),
        (["discard", "--life", "2weeks", "--made", "2026-11-20"], "4 December 2026 is the day"),
        (["sets", "--of", "speculum", "--cases", "6"], "4 sets at least"),
    ],
)
def test_each_calculator_answers(arguments: list[str], first: str) -> None:
    told = amount(*arguments)
    assert told.code == 0, told.said
    assert told.lines[0].startswith(first)
    assert "How it is worked out" in told.lines
    assert "Source" in told.lines


def test_a_load_is_judged_from_a_file_or_typed(tmp_path: Path) -> None:
    log = tmp_path / "load.txt"
    log.write_text(LOG, encoding="utf-8")
    assert amount("load", log).lines[0].startswith("Held long enough at 121 °C")
    broken = amount("load", "-", typed="0 121\n10 120\n20 121\n")
    assert broken.code == 1
    assert broken.lines[0].startswith("Not held long enough")
    assert "  Do not release this load. Nothing of it is used." in broken.lines
    log.write_bytes(b"\xff\xfe0 121")
    assert amount("load", log).code == 2


def test_a_refusal_says_why_and_what_would_do() -> None:
    told = amount("gauge", "--vessel", "stovetop-weight")
    assert told.code == 1
    assert told.lines[0].startswith("No answer: This vessel cannot reach 121 °C at this altitude.")
    assert "  The large stovetop vessel with dial and stopcock reaches it." in told.lines
    weak = amount("liquid", "--wanted", "6")
    assert weak.code == 1
    assert "6 % cannot be made from 5 %." in weak.said


@pytest.mark.parametrize("typed", ["1e999", "-0", "٣٫٥", "", " ", "9" * 5000, "\u202e5", "1,000L"])
def test_hostile_volumes_are_refused_in_words(typed: str) -> None:
    told = amount("liquid", f"--volume={typed}")
    assert told.code == (1 if typed.strip() else 2), told.said
    assert len(told.said) < 2000
    assert "Traceback" not in told.said


@pytest.mark.parametrize(
    ("typed", "plain"),
    [
        (["liquid", "--strength", "3.5 %"], ["liquid", "--strength", "3.5"]),
        (["liquid", "--wanted", "0,5%"], ["liquid", "--wanted", "0,5"]),
        (["liquid", "--volume", "2 litres"], ["liquid", "--volume", "2L"]),
        (["liquid", "--volume", "500ml"], ["liquid", "--volume", "500mL"]),
        (["liquid", "--degrees", "12°"], ["liquid", "--degrees", "12"]),
        (["tablets", "--grams", "0.5 g"], ["tablets", "--grams", "0.5"]),
        (["boiling", "--altitude", "900 m"], ["boiling", "--altitude", "900"]),
        (["gauge", "--mark", "150 kpa", "--temperature", "121 °C"], ["gauge", "--mark", "150"]),
        (["discard", "--made", "today", "--of", "chlorine"], ["discard", "--of", "chlorine"]),
        (["discard", "--life", "2 weeks"], ["discard", "--life", "2week"]),
    ],
    ids=" ".join,
)  # fmt: skip
def test_the_unit_that_is_asked_for_may_be_typed(typed: list[str], plain: list[str]) -> None:
    told = amount(*typed)
    assert told.code == 0, told.said
    assert told.said == amount(*plain).said


def test_a_clock_time_is_one_of_today() -> None:
    told = amount("out-time", "--start", "9:05", "--time", "20 minutes")
    assert told.code == 0
    assert told.lines[0].startswith("09:25 is when it is out")


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        (["liquid", "--volume", "2gal"], "“gal” is no unit for this; write L or mL."),
        (["liquid", "--wanted", "1000 ppm"], "1000 ppm are 0.1 %"),
        (["boiling", "--altitude", "3000ft"], "1000 feet are 305 m"),
        (["gauge", "--mark", "1.5atm"], "write kPa, bar, psi or kgf/cm²"),
        (["liquid", "--strength", "%"], "“%” is not a plain number"),
        (["liquid", "--strength", "5% sodium hypochlorite"], "is not a plain number"),
    ],
    ids=" ".join,
)
def test_another_unit_is_refused_with_the_one_that_would_do(typed: list[str], said: str) -> None:
    told = amount(*typed)
    assert told.code != 0
    assert said in told.said


def test_misuse_is_said_with_what_there_is() -> None:
    assert amount("gauge").code == 2
    assert amount("out-time", "--of", "x", "--time", "5min").code == 2
    unknown = amount("gauge", "--vessel", "cooker")
    assert unknown.code == 2
    assert "stovetop-adjustable" in unknown.said
    assert amount("liquid", "--strength", "5", "--degrees", "8").code == 2
    assert basinside("amount", "potion").code == 2


def test_a_tool_gets_the_answer_as_data(tmp_path: Path) -> None:
    found = json.loads(amount("liquid", "--json").said)
    assert found["amounts"][0] == {
        "number": "100",
        "unit": "mL",
        "of": ["of-liquid", {"percent": "5"}],
    }
    assert found["refusal"] is None
    nowhere = basinside("amount", "boiling", "--folder", tmp_path)
    assert nowhere.code == 2


def test_help_names_every_calculator() -> None:
    told = basinside("amount", "--help")
    assert told.code == 0
    assert all(kind in told.said for kind in AMOUNT_KINDS)
    for kind in AMOUNT_KINDS:
        assert basinside("amount", kind, "--help").code == 0


@pytest.mark.parametrize(
    ("kind", "option"),
    [("liquid", "--strength"), ("liquid", "--volume"), ("boiling", "--altitude"),
     ("out-time", "--start"), ("discard", "--made"), ("sets", "--hours")],
)  # fmt: skip
@pytest.mark.parametrize("empty", ["", "  "])
def test_an_option_given_empty_is_not_taken_for_the_clinics_own(
    kind: str, option: str, empty: str
) -> None:
    told = amount(kind, option, empty)
    assert told.code == 2
    assert f"'{option}': nothing is written there; write it, or leave the option out." in told.said
