"""The check at the prompt: what is asked for, what is left out and said to be, and its pages."""

from pathlib import Path

import pytest

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


def test_help_cuts_no_sentence() -> None:
    for group in ((), ("edition",), ("key",), ("trust",)):
        assert "..." not in basinside(*group, "--help").said.split("Commands:")[1]
