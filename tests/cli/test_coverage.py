"""What assessments cover, said to authors alone."""

import json
import re
import shutil
from pathlib import Path

from tests.built import CHECKOUT
from tests.cli.run import basinside


def report(*more: object, folder: Path = CHECKOUT, code: int = 0) -> str:
    told = basinside("coverage", "--folder", folder, *more)
    assert told.code == code, told.said
    return told.said


def test_each_topic_and_each_safety_step_is_counted() -> None:
    said = report()
    assert "core: Core knowledge, 20 questions on one form" in said
    assert "  cleaning: 15 %, 3 of a form," in said
    assert "Safety steps: " in said
    assert "  bag-mask-silicone-boil: 13 of 13" in said
    assert "This is for you alone" in said


def test_the_counts_agree_with_what_a_tool_reads() -> None:
    (core,) = json.loads(report("--json"))
    for topic in core["topics"]:
        assert topic["pool"] == sum(number for _kind, number in topic["thinking"])
    assert sum(each["in_a_form"] for each in core["topics"]) == core["items"]
    assert sum(each["percent"] for each in core["topics"]) == 100
    steps = [step for each in core["procedures"] for step in each["steps"]]
    asked = sum(bool(step["items"]) for step in steps)
    assert f"Safety steps: {asked} of {len(steps)} are asked about" in report()


def test_a_safety_step_that_nothing_asks_about_is_named(tmp_path: Path) -> None:
    clinic = tmp_path / "clinic"
    for name in ("content", "quizzes"):
        shutil.copytree(CHECKOUT / name, clinic / name)
    (core,) = json.loads(report("--json", folder=clinic))
    procedure = core["procedures"][0]
    lost = procedure["steps"][0]
    path = f"{procedure['procedure']}/{lost['step']}"
    last = core["procedures"][-1]
    other = f"{last['procedure']}/{last['steps'][0]['step']}"
    for each in sorted((clinic / "quizzes/questions").glob("assessment-*.yaml")):
        text = each.read_text(encoding="utf-8")
        each.write_text(re.sub(rf"{path}(?![\w-])", other, text), encoding="utf-8")
    said = report(folder=clinic)
    total = len(procedure["steps"])
    assert f"  {procedure['procedure']}: {total - 1} of {total}" in said
    assert f"    not asked: {lost['number']} {lost['step']}" in said


def test_steps_are_shown_with_their_questions_when_asked_for() -> None:
    (core,) = json.loads(report("--json"))
    step = core["procedures"][0]["steps"][0]
    assert f"    {step['number']} {step['step']}: {', '.join(step['items'])}" in report("--steps")


def test_a_new_clinic_has_no_assessment_yet() -> None:
    assert report(folder=CHECKOUT / "generator/basinside/starter") == (
        "There is no assessment yet.\n"
    )


def test_what_cannot_be_read_is_said(tmp_path: Path) -> None:
    (tmp_path / "content").mkdir()
    (tmp_path / "content" / "handbook.yaml").write_text("handbook: [", encoding="utf-8")
    assert "basinside check" in report(folder=tmp_path, code=1)
