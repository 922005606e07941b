"""What an author is told of a form and its cut, and where it is never told."""

import json
import shutil
from collections import Counter
from collections.abc import Iterable
from pathlib import Path

import pytest
import yaml
from scipy.stats import binom

from basinside.derive.forms import quotas
from basinside.load.content import load
from basinside.pipeline.build import read_clinic
from basinside.pipeline.form_report import report_of_form
from basinside.pipeline.forms import opened_form
from tests.cli.run import basinside, phrases


@pytest.fixture
def own(clinic: Path, tmp_path: Path) -> Path:
    """A copy of the clinic that may be changed."""
    folder = tmp_path / "own"
    for name in ("content", "quizzes"):
        shutil.copytree(clinic / name, folder / name)
    return folder


def pool(folder: Path) -> list[str]:
    content = read_clinic(folder).content
    topics = content.assessments["core"].blueprint.topics
    return [each.item.item for each in content.items("assessment") if each.topic in topics]


def write_sheet(folder: Path, items: Iterable[str], *judges: int, version: int = 2) -> None:
    """Each judge gives every item the same number; the first item ten more."""
    items = list(items)
    sheet = {
        "standard": "core",
        "version": version,
        "on": "2026-10-20",
        "judges": [
            {
                "role": f"nurse of ward {n}",
                "ratings": {item: each + 10 * (item == items[0]) for item in items},
            }
            for n, each in enumerate(judges)
        ],
    }
    path = folder / "quizzes" / "standards" / "core.yaml"
    path.parent.mkdir(exist_ok=True)
    path.write_text(yaml.safe_dump(sheet, sort_keys=False), encoding="utf-8")


def test_the_pool_says_what_a_form_would_mean(clinic: Path) -> None:
    ran = basinside("form-report", "core", "--folder", clinic)
    assert ran.code == 0, ran.said
    assert ran.lines[0] == "The pool can fill a form"
    # C19 and C20: 20 items, 16 to be right; and C21, the length that keeps both mistakes rare.
    assert "  Who knows 70 of 100 things passes about 24 times in 100." in ran.lines
    assert "  Who knows 90 of 100 things passes about 96 times in 100." in ran.lines
    assert "25 questions or more, with 21 to be right" in ran.said


def test_sealing_reports_the_very_form(own: Path) -> None:
    (own / "quizzes/sealed/core-A.json").unlink()
    phrase = phrases(own)["Marking phrase"]
    sealed = basinside("seal", "core", "--folder", own, "--phrase", phrase)
    assert sealed.code == 0, sealed.said
    assert "Blueprint of form A: met" in sealed.lines
    again = basinside("form-report", "core", "--form", "A", "--folder", own, "--phrase", phrase)
    assert again.code == 0, again.said
    assert again.said.strip() in sealed.said
    told = json.loads(
        basinside(
            "form-report", "core", "--form", "A", "--folder", own, "--phrase", phrase, "--json"
        ).said
    )
    items = opened_form(own, "core", "A", phrase=phrase).document["items"]
    content = read_clinic(own).content
    asked = {each.item.item: each for each in content.items("assessment")}
    critical = sum(asked[each["item"]].item.critical for each in items)
    assert told["critical"] == critical
    assert ("critical questions are many" in again.said) == (critical > 10)
    drawn = Counter(each["topic"] for each in items)
    assert {each["topic"]: each["have"] for each in told["topics"]} == drawn
    assert drawn == quotas(content.assessments["core"].blueprint.topics, 20)
    for chance in told["chances"]:
        known = chance["percent"] / 100
        # All critical ones right, and of the others what is still lacking to the cut.
        wanted = known**critical * binom.sf(16 - critical - 1, 20 - critical, known)
        assert chance["with_critical"] == pytest.approx(float(wanted))
        assert chance["once"] == pytest.approx(float(binom.sf(15, 20, known)))


def test_a_form_that_misses_its_blueprint_is_told(clinic: Path) -> None:
    content = read_clinic(clinic).content
    entry = content.assessments["core"]
    phrase = phrases(clinic)["Marking phrase"]
    document = opened_form(clinic, "core", "A", phrase=phrase).document
    assert report_of_form(content, entry, document).met
    items = [dict(each) for each in document["items"]]
    other = next(each["topic"] for each in items if each["topic"] != items[0]["topic"])
    items[0]["topic"], items[1]["item"] = other, "long-gone"
    report = report_of_form(content, entry, {**document, "items": items})
    assert not report.met
    assert report.gone == ("long-gone",)


def test_a_pool_that_cannot_fill_a_form_ends_with_one(own: Path) -> None:
    path = own / "quizzes/assessments/core.yaml"
    text = path.read_text(encoding="utf-8")
    path.write_text(text.replace("items: 20", "items: 900"), encoding="utf-8")
    ran = basinside("form-report", "core", "--folder", own)
    assert (ran.code, ran.lines[0]) == (1, "The pool can NOT fill a form")


def test_more_attempts_are_counted(own: Path) -> None:
    path = own / "quizzes/assessments/core.yaml"
    text = path.read_text(encoding="utf-8")
    path.write_text(text.replace("attempts: 1", "attempts: 3"), encoding="utf-8")
    ran = basinside("form-report", "core", "--folder", own)
    # Assessment science, 3.1: retakes of 16 of 20 by somebody who knows 70 %, three tries.
    assert "about 24 times in 100; about 56 times in 100 within 3 attempts." in ran.said


def test_judges_set_a_cut(own: Path) -> None:
    write_sheet(own, pool(own), 75, 79, 80)
    ran = basinside("standard", "core", "--folder", own)
    assert ran.code == 0, ran.said
    told = json.loads(basinside("standard", "core", "--folder", own, "--json").said)
    assert (told["judges"], told["rated"], told["not_rated"]) == (3, len(pool(own)), [])
    assert told["percent"] == pytest.approx(78 + 10 / len(pool(own)))
    assert told["se_judges"] == pytest.approx((7 / 3) ** 0.5)  # of 75, 79 and 80, over three
    assert told["se_items"] > told["se_judges"]
    assert told["needed"] == 16
    assert "The assessment asks for 16 (80 %): the same." in ran.lines
    assert "Fewer than 5 judges are a beginning." in ran.lines


def test_what_a_sheet_left_open_is_told(own: Path) -> None:
    items = pool(own)
    write_sheet(own, items[:-1], 90, 90, version=1)
    ran = basinside("standard", "core", "--folder", own)
    assert "Rated was version 1; the assessment is version 2 now." in ran.lines
    assert f"Not rated: {items[-1]}." in ran.lines
    assert "The assessment asks for 16 (80 %): fewer than judges expect." in ran.lines


def test_judges_say_what_they_expect_of_a_form(own: Path) -> None:
    phrase = phrases(own)["Marking phrase"]
    ask = ("form-report", "core", "--form", "A", "--folder", own, "--phrase", phrase)
    assert "Judges expect" not in basinside(*ask).said
    items = [
        each["item"] for each in opened_form(own, "core", "A", phrase=phrase).document["items"]
    ]
    others = [each for each in pool(own) if each not in items]
    write_sheet(own, [others[0], *items], 70, 80)
    said = basinside(*ask).said
    assert "Judges expect 15.0 of these 20 from somebody just able enough." in said


def test_without_a_sheet_there_is_one_to_fill(clinic: Path) -> None:
    ran = basinside("standard", "core", "--folder", clinic)
    assert (ran.code, len(ran.lines)) == (1, 1)
    assert "“basinside standard core --blank” prints a sheet to fill" in ran.said
    blank = basinside("standard", "core", "--folder", clinic, "--blank")
    read = yaml.safe_load(blank.said)
    assert list(read["judges"][0]["ratings"]) == pool(clinic)
    filled = blank.said.replace("on:\n", "on: 2026-10-20\n").replace("role:\n", "role: nurse\n")
    head, judges = filled.split("judges:\n")
    judge = judges.replace(":  # ", ": 80  # ")
    raw = (head + "judges:\n" + judge + judge).encode()
    _, problems = load({"quizzes/standards/core.yaml": raw})
    assert {each.rule for each in problems} <= {"unknown-id", "file-missing"}


def test_a_sheet_that_stops_the_build_gives_no_cut(own: Path) -> None:
    write_sheet(own, pool(own), 80)
    ran = basinside("standard", "core", "--folder", own)
    assert (ran.code, len(ran.lines)) == (1, 1)
    assert "one judge alone says nothing" in ran.said


@pytest.mark.parametrize("command", ["form-report", "standard"])
def test_an_assessment_that_is_not_there(clinic: Path, command: str) -> None:
    ran = basinside(command, "nothing", "--folder", clinic)
    assert (ran.code, ran.lines) == (1, ["There is no assessment “nothing”; there is core."])


def test_where_names_the_judges_of_a_question(own: Path) -> None:
    items = pool(own)
    write_sheet(own, items, 70, 80)
    ran = basinside("where", items[0], "--folder", own)
    assert ran.code == 0
    assert "  What judges expect (2)" in ran.lines
    assert "ratings for core: a judge's rating" in ran.said
