"""The check at the prompt: what is asked for, what is left out and said to be, and its pages."""

import json
import os
import pty
import subprocess
import sys
from pathlib import Path

import pytest

from basinside.check.explain import all_ids
from tests.cli.run import basinside


@pytest.fixture
def mistaken(tmp_path: Path) -> Path:
    """Return a clinic just begun, with a word that is in no list and a key that is none."""
    folder = tmp_path / "my clinic"
    basinside("new", folder)
    for name, old, new in (
        ("content/figures/boiling.yaml", "basis: published", "basis: book"),
        ("content/agents/detergent.yaml", "waste:", "wast:"),
    ):
        path = folder / name
        path.write_text(path.read_text().replace(old, new))
    return folder


def test_a_clinic_just_begun_has_nothing_wrong(tmp_path: Path) -> None:
    begun = basinside("new", tmp_path / "my clinic")
    assert f'basinside check --folder "{tmp_path / "my clinic"}"' in begun.said
    told = basinside("check", "--folder", tmp_path / "my clinic")
    assert (told.code, told.said) == (0, "Nothing is wrong.\n")


@pytest.mark.parametrize(
    "asked",
    [("--rule", "unknown-word"), ("--only", "content/figures"), ("--only", r"content\figures")],
)
def test_what_is_left_out_is_said(mistaken: Path, asked: tuple[str, str]) -> None:
    told = basinside("check", "--folder", mistaken, *asked)
    assert told.code == 1
    first, *rest = told.said.splitlines()
    assert first.startswith("content/figures/boiling.yaml:10:12: ")
    assert rest == [
        "1 problem stops the build.",
        "Not shown, as you asked: what else stops the build (1).",
    ]


def test_nothing_wrong_in_one_place_is_not_nothing_wrong(mistaken: Path) -> None:
    told = basinside("check", "--folder", mistaken, "--only", "content/routes")
    assert told.code == 0
    assert told.lines == [
        "Nothing is wrong there.",
        "Not shown, as you asked: what else stops the build (2).",
    ]


@pytest.mark.parametrize("option", ["--rule", "--explain"])
def test_a_rule_that_is_none_gets_the_nearest(mistaken: Path, option: str) -> None:
    told = basinside("check", "--folder", mistaken, option, "unknow-word")
    assert told.code == 2
    assert "There is no rule “unknow-word”. Did you mean “unknown-word”?" in told.said


def test_rules_and_paths_can_be_several(mistaken: Path) -> None:
    asked = ("--rule", "unknown-word", "--rule", "unknown-key")
    told = basinside("check", "--folder", mistaken, *asked)
    assert told.lines[-1] == "2 problems stop the build."
    below = ("--only", "content/routes", "--only", "content/agents/")
    told = basinside("check", "--folder", mistaken, *below)
    assert told.code == 1
    assert [line.split(":")[0] for line in told.lines[:1]] == ["content/agents/detergent.yaml"]
    assert told.lines[-1] == "Not shown, as you asked: what else stops the build (1)."


def test_a_path_typed_from_anywhere_is_understood(
    mistaken: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    whole = mistaken / "content/figures/boiling.yaml"
    monkeypatch.chdir(mistaken / "content")
    for path in (whole, "figures", "./figures/", "figures/boiling.yaml"):
        told = basinside("check", "--folder", mistaken, "--only", path)
        assert told.said.startswith("content/figures/boiling.yaml:10:12: "), path


@pytest.mark.parametrize(
    ("path", "near"),
    [
        ("conten/figures", "content/figures"),
        ("figures", "content/figures"),
        ("boiling.yml", "content/figures/boiling.yaml"),
        ("content/agents/detergnt.yaml", "content/agents/detergent.yaml"),
    ],
)
def test_a_path_that_is_none_gets_the_nearest(mistaken: Path, path: str, near: str) -> None:
    told = basinside("check", "--folder", mistaken, "--only", path)
    assert told.code == 2
    assert f"There is no file of this clinic below “{path}”. Did you mean “{near}”?" in told.said


def test_people_see_problems_below_their_file(mistaken: Path) -> None:
    told = basinside("check", "--folder", mistaken, "--grouped", env={"COLUMNS": "70"})
    assert (
        told.said
        == """\
content/agents/detergent.yaml
  10:7  stops  there is no key “wast” here
               Did you mean “waste”?
               [unknown-key]

content/figures/boiling.yaml
  10:12  stops  basis: “book” is not one of: manufacturer, published,
                published (read second-hand), computed, local policy,
                common practice, from memory
                [unknown-word]

2 problems stop the build.
"""
    )


def test_both_forms_name_the_same_places(mistaken: Path) -> None:
    plain = basinside("check", "--folder", mistaken, "--plain").said
    assert plain == basinside("check", "--folder", mistaken).said  # a pipe is no terminal
    told = json.loads(basinside("check", "--folder", mistaken, "--json").said)
    places = [f"{each['file']}:{each['line']}:{each['column']}" for each in told]
    assert [line.split(": ")[0] for line in plain.splitlines()[:-1]] == places
    grouped = basinside("check", "--folder", mistaken, "--grouped").said
    assert all(f" {each['line']}:{each['column']} " in grouped for each in told)


@pytest.mark.parametrize("forbidden", [False, True])
def test_colours_are_for_terminals_where_nobody_forbids_them(
    mistaken: Path, forbidden: bool
) -> None:
    said = at_a_terminal(mistaken, {"NO_COLOR": "1"} if forbidden else {})
    assert said.splitlines()[-1].strip() == "2 problems stop the build."
    assert "content/agents/detergent.yaml\r\n" in said.replace("\x1b[0m", "")
    assert ("\x1b[" in said) is not forbidden


def at_a_terminal(folder: Path, env: dict[str, str]) -> str:
    """Return what the check prints when its output is a terminal."""
    ours, theirs = pty.openpty()
    kept = {name: os.environ[name] for name in ("PATH", "PYTHONPATH") if name in os.environ}
    command = [sys.executable, "-m", "basinside", "check", "--folder", str(folder)]
    ran = subprocess.Popen(command, stdout=theirs, env={**kept, "TERM": "xterm", **env})
    os.close(theirs)
    said = b""
    while True:
        try:
            more = os.read(ours, 4096)
        except OSError:  # the other end is closed
            break
        if not more:
            break
        said += more
    os.close(ours)
    assert ran.wait(30) == 1
    return said.decode()


def test_every_rule_is_listed_with_its_level() -> None:
    told = basinside("check", "--explain", "all")
    assert told.code == 0
    heads = [line for line in told.lines if not line.startswith(" ")]
    assert [line.split(" ")[0] for line in heads] == list(all_ids())
    assert "incompatible-agents (never)" in heads
    assert "review-overdue (warn, with a day)" in heads
    assert "waiver-ended (stop, with a day)" in heads


WAIVE = """\
waive:
  - rule: print-without-place
    because: The wall is painted.
    by: infection-prevention lead
    second: midwife in charge
    on: 2026-02-01
    until: {until}
"""


@pytest.fixture
def waiving(tmp_path: Path) -> Path:
    """Return a clinic just begun with two waivers, of which the one at a value ends first."""
    folder = tmp_path / "waiving"
    basinside("new", folder)
    handbook = folder / "content/handbook.yaml"
    handbook.write_text(handbook.read_text() + WAIVE.format(until="2027-06-30"))
    figures = folder / "content/figures/boiling.yaml"
    waiver = WAIVE.format(until="2026-12-01").replace("print-without-place", "source-missing")
    block = "".join(f"    {line}\n" for line in waiver.splitlines())
    text = figures.read_text()
    figures.write_text(text.replace("    basis: published\n", f"    basis: published\n{block}", 1))
    return folder


def test_waivers_are_listed_and_ended_ones_come_first_and_stop(waiving: Path) -> None:
    told = basinside("check", "--folder", waiving, "--waivers")
    assert told.code == 0
    assert told.lines[-1] == "2 waivers. Give --today DATE to see which have ended."
    told = basinside("check", "--folder", waiving, "--waivers", "--today", "2026-12-02")
    first, because, who, *_ = told.lines
    assert first.startswith("content/figures/boiling.yaml:")
    assert first.endswith("source-missing, ended on 2026-12-01")
    assert because == "  The wall is painted."
    assert who == "  by infection-prevention lead · midwife in charge on 2026-02-01"
    assert told.lines[-1] == "2 waivers, 1 of them has ended."
    asked = ("--rule", "waiver-ended", "--today")
    assert basinside("check", "--folder", waiving, *asked, "2026-12-01").code == 0
    ended = basinside("check", "--folder", waiving, *asked, "2026-12-02")
    assert ended.code == 1
    assert "1 problem stops the build." in ended.said


def test_waivers_are_told_to_a_tool(waiving: Path) -> None:
    asked = ("--waivers", "--today", "2027-07-01", "--json")
    told = json.loads(basinside("check", "--folder", waiving, *asked).said)
    assert [(each["rule"], each["ended"]) for each in told] == [
        ("source-missing", True),
        ("print-without-place", True),
    ]
    assert "waiver-ended" in told[0]["wrong"][0]


def test_help_cuts_no_sentence() -> None:
    for group in ((), ("edition",), ("key",), ("trust",)):
        assert "..." not in basinside(*group, "--help").said.split("Commands:")[1]
