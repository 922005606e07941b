"""Typing in answers and observed lines: echoed, and nothing lost on a slip."""

import json
from pathlib import Path

import pytest

from basinside.pipeline.entering import checklist, read_lines
from basinside.pipeline.forms import opened_form
from basinside.pipeline.refusal import RefusedError
from tests.cli.run import Ran, basinside, phrases

BOIL = "bag-mask-silicone-boil"
ITEMS = 20  # of the demonstration's core assessment
ATTEMPT = "M-20-core-A-2026-11-18.attempt.json"


def enter(clinic: Path, into: Path, *more: object, typed: str | None = None) -> Ran:
    return basinside(
        "enter-attempt", "core", "--learner", "M-20", "--date", "2026-11-18",
        "--folder", clinic, "--into", into, *more, typed=typed,
    )  # fmt: skip


def answers(count: int = ITEMS, first: str = "B") -> str:
    return " ".join(f"{n}{first if n == 1 else 'A'}" for n in range(1, count + 1))


def test_answers_in_one_line_make_the_attempt(clinic: Path, tmp_path: Path) -> None:
    code = phrases(clinic)["Opening code, core A"]
    ran = enter(clinic, tmp_path, "--code", code, "--answers", answers()[:-3] + f"{ITEMS}-")
    assert ran.code == 0, ran.said
    plain = json.loads((tmp_path / ATTEMPT).read_text(encoding="utf-8"))
    form = opened_form(clinic, "core", "A", code=code)
    assert plain["form_digest"] == form.digest
    assert [each["item"] for each in plain["items"]] == [
        each["item"] for each in form.document["items"]
    ]
    assert plain["items"][0]["chosen"] == [1]
    assert "chosen" not in plain["items"][ITEMS - 1]
    assert not {"points", "score", "passed"} & set(plain)
    assert f"1 B    {form.document['items'][0]['stem']}" in ran.said


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ("1B 2Z", "Question 2: “Z” is no option here"),
        ("1B 1A", "Question 1 is answered twice."),
        ("99A", f"There is no question 99; there are 1 to {ITEMS}."),
        ("B", "“B” is no answer"),
        (answers(ITEMS - 1), f"No answer to {ITEMS}; write {ITEMS}- for a question left open."),
        ("1AA", "names an option twice"),
    ],
)
def test_a_slip_in_one_line_is_named_and_nothing_is_written(
    clinic: Path, tmp_path: Path, typed: str, says: str
) -> None:
    code = phrases(clinic)["Opening code, core A"]
    ran = enter(clinic, tmp_path, "--code", code, "--answers", typed)
    assert (ran.code, len(ran.lines)) == (1, 1)
    assert says in ran.said
    assert not list(tmp_path.iterdir())


def test_at_the_prompt_a_slip_loses_nothing(clinic: Path, tmp_path: Path) -> None:
    code = phrases(clinic)["Opening code, core A"]
    keys = ["b", "?", "Z", "", "c", *["A"] * (ITEMS - 3), "-"]
    ran = enter(clinic, tmp_path, "--code", code, typed="\n".join(keys) + "\n")
    assert ran.code == 0, ran.said
    assert ran.said.count("Nothing was lost; type it again.") == 3
    plain = json.loads((tmp_path / ATTEMPT).read_text(encoding="utf-8"))
    assert [each.get("chosen") for each in plain["items"][:3]] == [[1], [2], [0]]


def test_an_attempt_is_never_overwritten(clinic: Path, tmp_path: Path) -> None:
    code = phrases(clinic)["Opening code, core A"]
    assert enter(clinic, tmp_path, "--code", code, "--answers", answers()).code == 0
    before = (tmp_path / ATTEMPT).read_bytes()
    assert enter(clinic, tmp_path, "--code", code, "--answers", answers(first="C")).code == 2
    assert (tmp_path / ATTEMPT).read_bytes() == before


@pytest.mark.parametrize("code", ["AAA", "222-222-222", "O00-000-000"])
def test_a_wrong_opening_code_is_one_plain_line(clinic: Path, tmp_path: Path, code: str) -> None:
    ran = enter(clinic, tmp_path, "--code", code, "--answers", answers())
    assert (ran.code, len(ran.lines)) == (1, 1)


def test_no_staff_code_no_attempt(clinic: Path, tmp_path: Path) -> None:
    code = phrases(clinic)["Opening code, core A"]
    ran = enter(clinic, tmp_path, "--code", code, "--answers", answers(), "--learner", "Mary")
    assert ran.code == 2
    assert "“Mary” is no staff code" in ran.said
    assert not list(tmp_path.iterdir())


def observe(clinic: Path, into: Path, *more: object, typed: str | None = None) -> Ran:
    return basinside(
        "enter-observation", BOIL, "--learner", "M-20", "--observer", "S-02",
        "--date", "2026-11-18", "--start", "09:10", "--setting", "real",
        "--folder", clinic, "--into", into, *more, typed=typed,
    )  # fmt: skip


def test_lines_in_one_go_make_the_observation(clinic: Path, tmp_path: Path) -> None:
    ran = observe(
        clinic, tmp_path, "--lines", "all met, 2 not met: forgot the eyes, and the apron",
        "--no-help", "--spot-check", "--end", "10:00",
    )  # fmt: skip
    assert ran.code == 0, ran.said
    plain = json.loads(next(tmp_path.iterdir()).read_text(encoding="utf-8"))
    _, lines = checklist(clinic, BOIL)
    assert [each["meaning"] for each in plain["lines"]] == [each.meaning for each in lines]
    assert plain["lines"][1]["verdict"] == "not met"
    assert plain["lines"][1]["why"] == "forgot the eyes, and the apron"
    assert (plain["announced"], plain["help"], plain["end"]) == (False, False, "10:00")
    assert basinside("score", next(tmp_path.iterdir()), "--folder", clinic).code == 1


def test_at_the_prompt_each_line_is_asked(clinic: Path, tmp_path: Path) -> None:
    _, lines = checklist(clinic, BOIL)
    keys = ["mett", "met", "not seen", "it was dark", *["met"] * (len(lines) - 2), "n"]
    ran = observe(clinic, tmp_path, typed="\n".join(keys) + "\n")
    assert ran.code == 0, ran.said
    assert ran.said.count("Nothing was lost; type it again.") == 1
    plain = json.loads(next(tmp_path.iterdir()).read_text(encoding="utf-8"))
    assert plain["lines"][1]["why"] == "it was dark"
    assert plain["help"] is False


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ("1 met", "No verdict on 2"),
        ("all met, 99 met", "There is no line 99"),
        ("all fine", "“all fine” cannot be read"),
        ("all met, 2 not met", "Line 2 was not met: say why"),
    ],
)
def test_a_slip_in_the_lines_is_named(clinic: Path, typed: str, says: str) -> None:
    _, lines = checklist(clinic, BOIL)
    with pytest.raises(RefusedError, match=says):
        read_lines(typed, lines)


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        (("--observer", "M-20"), "Nobody observes themselves"),
        (("--comments", "x" * 5000), "comments"),
    ],
)
def test_what_cannot_be_an_observation(
    clinic: Path, tmp_path: Path, changes: tuple[str, ...], says: str
) -> None:
    ran = observe(clinic, tmp_path, "--lines", "all met", "--no-help", *changes)
    assert ran.code == 1
    assert says in ran.lines[-1]
    assert not list(tmp_path.iterdir())


def test_a_day_that_is_none_is_misuse(clinic: Path, tmp_path: Path) -> None:
    assert enter(clinic, tmp_path, "--date", "tomorrow").code == 2


@pytest.mark.parametrize(
    ("option", "typed", "says"),
    [
        (
            "--learner",
            "m12",
            "“m12” is no staff code; write capital letters, a hyphen and",
        ),
        ("--observer", "Anna", "“Anna” is no staff code"),
        ("--start", "25:10", "“25:10” is no time; write it as 09:10."),
        ("--end", "half nine", "“half nine” is no time"),
        ("--date", "20.11.2026", "“20.11.2026” is no day; write it as 2026-11-20."),
    ],
)
def test_a_slip_in_an_option_is_told_before_anything_is_typed(
    clinic: Path, tmp_path: Path, option: str, typed: str, says: str
) -> None:
    given = {
        "--learner": "M-12",
        "--observer": "S-02",
        "--date": "2026-11-20",
        "--start": "9:10",
        "--end": "10:05",
        "--setting": "real",
    }
    words = [word for pair in {**given, option: typed}.items() for word in pair]
    ran = basinside(
        "enter-observation", "bag-mask-silicone-boil", "--folder", clinic, *words,
        "--into", tmp_path,
    )  # fmt: skip
    assert ran.code == 2
    assert says in ran.said
    assert "1 Wipe" not in ran.said


def test_an_hour_of_one_figure_is_read(clinic: Path, tmp_path: Path) -> None:
    ran = basinside(
        "enter-observation", "bag-mask-silicone-boil", "--folder", clinic, "--learner", "M-12",
        "--observer", "S-02", "--date", "2026-11-20", "--start", "9:10", "--setting", "real",
        "--no-help", "--lines", "all met", "--into", tmp_path,
    )  # fmt: skip
    assert ran.code == 0
    assert [each.name for each in tmp_path.iterdir()] == [
        "M-12-bag-mask-silicone-boil-2026-11-20-0910.observation.json"
    ]
