"""Where an id is used: each use in words, what follows, and the nearest for what is none."""

import json
from pathlib import Path

import pytest

from tests.built import CHECKOUT
from tests.cli.run import basinside


def where(written: str, *more: object, code: int = 0, folder: Path = CHECKOUT) -> str:
    told = basinside("where", written, "--folder", folder, *more)
    assert told.code == code, told.said
    return told.said


def test_a_value_is_followed_to_steps_questions_walls_and_groups() -> None:
    said = where("boil.hold")
    assert said.startswith("boil.hold is a value: shortest time at a rolling boil")
    boil = "bag-mask-silicone-boil/start-timing, disinfection, safety step"
    assert f"{boil} (so too suction-bulb-boil/start-timing): how long it is held" in said
    assert "topic disinfection: a value that its key rests on" in said
    assert ": option 1, in the reason given" in said or "in option" in said
    assert "    Wall chart of suction-bulb-boil, beside the stove\n" in said
    assert "Watched at sign-off, as safety steps (5)" in said
    assert said.endswith("    bag-masks\n    aspirators\n")


def test_each_use_stands_where_it_is_said_to() -> None:
    told = json.loads(where("boil.hold", "--json"))
    (found,) = told["found"]
    assert found["count"] == len(found["uses"])
    for use in found["uses"]:
        lines = (CHECKOUT / use["file"]).read_text(encoding="utf-8").splitlines()
        from_there = "\n".join(lines[use["line"] - 1 : use["line"] + 6])
        assert "boil.hold" in from_there, use


@pytest.mark.parametrize(
    ("written", "kind", "says"),
    [
        ("chlorine.presoak", "choice between sources", "the choice it follows"),
        ("chlorine", "chemical", "its chemical"),
        ("boil", "route", "the routes that the clinic has"),
        ("bag-mask-silicone", "instrument", "cases a year"),
        ("bag-mask-silicone/leaf-valve", "part of an instrument", "what comes off"),
        ("bag-mask-silicone-boil", "procedure", "who is certified together"),
        ("bag-mask-silicone-boil/start-timing", "step", "a step that its key rests on"),
        ("cdc-2008", "source", "where it comes from"),
        ("sterile", "word of the trade", "in what to do"),
        ("exposure", "somebody to ring", "whom to ring"),
        ("core", "assessment", "the policy"),
        ("stovetop-weight", "vessel", "what it is worked out from"),
        ("steam", "topic of questions", "what its forms are made of"),
        ("boil-rolling.svg", "picture", "its picture"),
    ],
)
def test_every_kind_of_id_is_found(written: str, kind: str, says: str) -> None:
    said = where(written)
    assert f" {kind}" in said.splitlines()[0]
    assert f": {says}" in said


def test_an_id_of_several_kinds_lists_each() -> None:
    said = where("leaf-valve")
    heads = [line for line in said.splitlines() if line and not line.startswith(" ")]
    assert [line.split(" ")[0] for line in heads] == [
        "bag-mask-silicone/leaf-valve",
        "bag-mask-vinyl/leaf-valve",
    ]


def test_a_rule_lists_its_waivers(tmp_path: Path) -> None:
    basinside("new", tmp_path / "own")
    assert "No waiver names it." in where("source-missing", folder=tmp_path / "own")
    path = tmp_path / "own/content/handbook.yaml"
    waiver = (
        "waive:\n  - {rule: print-without-place, because: no wall yet, by: lead,"
        " second: midwife, on: 2026-01-01, until: 2027-01-01}\n"
    )
    path.write_text(path.read_text(encoding="utf-8") + waiver, encoding="utf-8")
    said = where("print-without-place", folder=tmp_path / "own")
    assert "the handbook: a waiver" in said


@pytest.mark.parametrize(
    ("written", "near"),
    [
        ("bol.hold", "boil.hold, a value"),
        ("Boil.Hold", "boil.hold, a value"),
        ("boil/start", "bag-mask-silicone-boil/start-timing, a step"),
        ("clorine", "chlorine, a chemical"),
        ("stovetop-wait", "stovetop-weight, a vessel"),
        ("sourse-missing", "source-missing, a rule"),
    ],
)
def test_what_is_no_id_gets_the_nearest_of_every_kind(written: str, near: str) -> None:
    said = where(written, code=1)
    assert said.startswith(f"Nothing is called “{written}” here.")
    assert f"  {near}\n" in said


def test_what_is_like_nothing_is_said() -> None:
    assert "asked for as boil.hold" in where("zzzzqq", code=1)
