"""Sealing, printing, typing in and scoring a form."""

import json
import re
import shutil
from pathlib import Path
from typing import Any

import html5lib
import pytest

from basinside.pipeline.forms import opened_form, opened_keys
from tests.cli.run import basinside, edited, evidence, phrases

SEALED = "quizzes/sealed/core-A.json"


@pytest.fixture
def unsealed(clinic: Path, tmp_path: Path) -> Path:
    """The clinic without its sealed form."""
    folder = tmp_path / "unsealed"
    for name in ("content", "quizzes"):
        shutil.copytree(clinic / name, folder / name)
    (folder / SEALED).unlink()
    return folder


def test_sealing_shows_what_opens_the_form_once(unsealed: Path) -> None:
    ran = basinside("seal", "core", "--folder", unsealed, "--new-phrase")
    assert ran.code == 0, ran.said
    code = re.search(r"Opening code +([0-9A-Z-]{11})\n", ran.said)
    phrase = re.search(r"Marking phrase +([a-z ]+)\n", ran.said)
    assert code
    assert phrase
    by_code = opened_form(unsealed, "core", "A", code=code[1]).document
    by_phrase = opened_form(unsealed, "core", "A", phrase=phrase[1]).document
    assert by_code == by_phrase
    assert len(by_code["items"]) == 20
    text = (unsealed / SEALED).read_text(encoding="utf-8")
    assert all(each["stem"] not in text for each in by_code["items"])
    assert code[1].replace("-", "") not in text


def test_a_sealed_form_is_never_overwritten(clinic: Path) -> None:
    before = (clinic / SEALED).read_bytes()
    ran = basinside("seal", "core", "--folder", clinic, "--new-phrase")
    assert (ran.code, len(ran.lines)) == (2, 1)
    assert (clinic / SEALED).read_bytes() == before


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (("nothing", "--new-phrase"), "There is no assessment “nothing”; there is core."),
        (("core", "--form", "B", "--new-phrase"), "core has no form B; its forms are A."),
        (("core", "--phrase", "my own words"), "is not a word of our list"),
    ],
)
def test_what_cannot_be_sealed(unsealed: Path, arguments: tuple[str, ...], says: str) -> None:
    ran = basinside("seal", "--folder", unsealed, *arguments)
    assert (ran.code, len(ran.lines)) == (1, 1)
    assert says in ran.said


def test_a_form_is_printed_to_two_sound_files(clinic: Path, tmp_path: Path) -> None:
    phrase = phrases(clinic)["Marking phrase"]
    ran = basinside("form", "core", "--folder", clinic, "--phrase", phrase, "--into", tmp_path)
    assert ran.code == 0, ran.said
    questions = (tmp_path / "question-form-core-A.html").read_text(encoding="utf-8")
    key = (tmp_path / "answer-key-core-A.html").read_text(encoding="utf-8")
    for text in (questions, key):
        parser = html5lib.HTMLParser()
        parser.parse(text)
        assert [name for _, name, _ in parser.errors] == []
    items = opened_form(clinic, "core", "A", phrase=phrase).document["items"]
    keys = opened_keys(clinic, "core", "A", phrase)["items"]
    assert questions.count("<i></i>") == sum(len(each["options"]) for each in items)
    right = sum("has" in each for item in keys for each in item["plan"]["pass_all"])
    assert key.count('class="chosen"') == right
    assert "Right" not in questions
    assert "Unsafe" not in questions
    assert "Critical" not in questions
    assert key.count("<strong>Right</strong>") == right
    assert "Staff code" in questions
    for word in ("2026.2", "Highfell Birth Centre", "version 2, form A", "Void after", ">Ask<"):
        # On both ends: a sheet that got loose says which form it is of.
        assert questions.count(word) == key.count(word) == 2, word


def test_the_letters_on_paper_follow_the_stored_order(clinic: Path, tmp_path: Path) -> None:
    phrase = phrases(clinic)["Marking phrase"]
    basinside("form", "core", "--folder", clinic, "--phrase", phrase, "--into", tmp_path)
    text = (tmp_path / "question-form-core-A.html").read_text(encoding="utf-8")
    shown = re.findall(r"<li><b>([A-Z])</b> <span>([^<]*)</span></li>", text)
    items = opened_form(clinic, "core", "A", phrase=phrase).document["items"]
    wanted = [("ABCDEFGH"[n], option) for each in items for n, option in enumerate(each["options"])]
    assert [(letter, re.sub("&#39;", "'", option)) for letter, option in shown] == wanted


@pytest.mark.parametrize("inside", ["site", "site/print", "content", "quizzes"])
def test_prints_never_go_where_the_handbook_is(clinic: Path, inside: str) -> None:
    phrase = phrases(clinic)["Marking phrase"]
    ran = basinside("form", "core", "--folder", clinic, "--phrase", phrase,
                    "--into", clinic / inside)  # fmt: skip
    assert (ran.code, len(ran.lines)) == (1, 1)
    assert not list(clinic.rglob("*.html"))


def test_nor_into_a_built_folder_elsewhere(clinic: Path, tmp_path: Path) -> None:
    (tmp_path / "store.html").write_text("")
    phrase = phrases(clinic)["Marking phrase"]
    ran = basinside("form", "core", "--folder", clinic, "--phrase", phrase,
                    "--into", tmp_path / "print")  # fmt: skip
    assert ran.code == 1


@pytest.mark.parametrize("command", ["form", "score"])
def test_a_wrong_phrase_is_one_plain_line(clinic: Path, tmp_path: Path, command: str) -> None:
    wrong = phrases(clinic)["Root key phrase"]
    given = (
        ("form", "core", "--into", tmp_path)
        if command == "form"
        else ("score", next(each for each in evidence(clinic) if ".attempt." in each.name))
    )
    ran = basinside(*given, "--folder", clinic, "--phrase", wrong)
    assert (ran.code, ran.lines) == (
        1,
        ["This code does not open it: a word is wrong, or the file was altered."],
    )


def test_scores_name_critical_and_unsafe_answers(clinic: Path) -> None:
    phrase = phrases(clinic)["Marking phrase"]
    files = [each for each in evidence(clinic, "M-1") if ".attempt." in each.name]
    ran = basinside("score", "--folder", clinic, "--phrase", phrase, *files)
    assert ran.code == 1
    assert "M-12, core, form A, 2026-11-16: passed." in ran.lines
    assert "M-15, core, form A, 2026-11-16: not passed." in ran.lines
    assert "Critical question missed" in ran.said
    assert "Unsafe answer chosen" in ran.said
    assert basinside("score", "--folder", clinic, "--phrase", phrase, files[0]).code == 0


def test_scores_for_a_tool(clinic: Path) -> None:
    phrase = phrases(clinic)["Marking phrase"]
    file = next(each for each in evidence(clinic) if ".attempt." in each.name)
    ran = basinside("score", "--json", file, "--folder", clinic,
                    env={"BASINSIDE_PHRASE": phrase})  # fmt: skip
    assert json.loads(ran.said)[0]["points"] == 20 * 60


def test_a_self_test_is_refused_by_name(clinic: Path, tmp_path: Path) -> None:
    file = next(each for each in evidence(clinic) if ".attempt." in each.name)
    practice = edited(file, tmp_path, kind="self-test", id="drying", form=None, form_digest=None)
    ran = basinside("score", practice, "--folder", clinic)
    assert (ran.code, len(ran.lines)) == (1, 1)
    assert "self-test on drying" in ran.said


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        ({"instrument": "bag-mask-vinyl"}, "is of instrument bag-mask-silicone; the sheet says"),
        ({"instrument": "kettle"}, "the sheet says kettle"),
        ({"route": "steam-wrapped"}, "is of route boil; the sheet says steam-wrapped"),
        ({"edition": "2099.1"}, "edition 2099.1 is later than this handbook's"),
        ({"edition": "2026.10"}, "edition 2026.10 is later than this handbook's"),
        ({"handbook": "lowfell"}, "this is of handbook lowfell"),
        ({"procedure": "kettle-boil"}, "there is no procedure kettle-boil here"),
        ({"observer_staff_code": "M-12"}, "nobody observes themselves"),
        ({"start": "9:10"}, "start: this is not written as our files write it"),
        ({"setting": None}, "setting: this is missing"),
    ],
)
def test_a_sheet_of_something_else_is_refused_in_plain_words(
    clinic: Path, tmp_path: Path, changes: dict[str, Any], says: str
) -> None:
    sheet = next(each for each in evidence(clinic) if "-silicone-boil-" in each.name)
    ran = basinside("score", "--folder", clinic, edited(sheet, tmp_path, **changes))
    assert (ran.code, len(ran.lines)) == (1, 1)
    assert says in ran.said
    assert "Value error" not in ran.said


def test_a_sheet_of_an_earlier_edition_counts_while_the_steps_are_the_same(
    clinic: Path, tmp_path: Path
) -> None:
    sheet = next(each for each in evidence(clinic) if "-silicone-boil-" in each.name)
    ran = basinside("score", "--folder", clinic, edited(sheet, tmp_path, edition="2026.1"))
    assert ran.code == 0, ran.said


def test_keys_of_another_drawing_mark_nothing(clinic: Path, tmp_path: Path) -> None:
    own = tmp_path / "own"
    shutil.copytree(clinic, own)
    path, phrase = own / "quizzes/sealed/core-A.json", phrases(clinic)["Marking phrase"]
    first = json.loads(path.read_text(encoding="utf-8"))
    path.unlink()
    assert basinside("seal", "core", "--folder", own, "--phrase", phrase).code == 0
    second = json.loads(path.read_text(encoding="utf-8"))
    for name in ("keys", "mark_keys", "phrase_keys"):
        first["envelopes"][name] = second["envelopes"][name]
    path.write_text(json.dumps(first), encoding="utf-8")
    file = next(each for each in evidence(clinic) if ".attempt." in each.name)
    ran = basinside("score", file, "--folder", own, "--phrase", phrase)
    assert (ran.code, len(ran.lines)) == (1, 1)
    assert "the keys are of another drawing of this form" in ran.said


def test_a_file_of_another_kind_is_refused(clinic: Path) -> None:
    ran = basinside("score", clinic / "content/trust.json", "--folder", clinic)
    assert (ran.code, len(ran.lines)) == (1, 1)
    assert "neither an attempt nor an observation" in ran.said


def test_an_observation_that_does_not_count_says_why(clinic: Path) -> None:
    ran = basinside("score", "--folder", clinic, *evidence(clinic, "M-15-bag"))
    assert ran.code == 1
    assert "keep-moist: not met" in ran.said
