"""A sheet of judges' ratings is read whole, and what is missing on it has a place and a mend."""

import pytest

from tests.check.clinic import base_files
from tests.derive.clinic import loaded
from tests.plain.clinic import read

SHEET = "quizzes/standards/core.yaml"


def items() -> tuple[str, ...]:
    return tuple(each.item.item for each in loaded(base_files()).items("assessment"))


def sheet() -> str:
    first, second, *_ = items()
    return (
        "standard: core\nversion: 1\non: 2026-10-20\njudges:\n"
        f"  - role: ward nurse\n    ratings:\n      {first}: 80\n      {second}: 65 %\n"
        f"  - role: theatre nurse\n    ratings:\n      {first}: 70\n      {second}: 60\n"
    )


def said(text: str, name: str = SHEET) -> list[str]:
    lines = read({**base_files(), name: text.encode()}).lines
    return [each.removeprefix(f"{name}:") for each in lines if each.startswith(f"{name}:")]


def test_a_sheet_is_read() -> None:
    content = loaded({**base_files(), SHEET: sheet().encode()})
    standard = content.standards["core"]
    first, second, *_ = items()
    assert [judge.role for judge in standard.judges] == ["ward nurse", "theatre nurse"]
    assert standard.judges[0].ratings == {first: 80, second: 65}
    assert said(sheet()) == []


@pytest.mark.parametrize(
    ("old", "new", "line"),
    [
        ("standard: core", "standard: cores",
         "1:11: there is no assessment “cores”. Did you mean “core”? [unknown-id]"),
        ("{second}: 60", "{second}x: 60",
         "12:{after}: there is no item “{second}x”. Did you mean “{second}”? [unknown-id]"),
        ("      {second}: 60\n", "",
         ("10:5: judge 2 (theatre nurse) has not rated {second}. Each judge rates each item; take"
          " an item out for all, or ask this one. [missing-key]")),
        ("{second}: 60", "{second}: 160",
         "12:{at}: {second} cannot be “160”. Write a share of the whole as 20 %. [bad-value]"),
        ("on: 2026-10-20\n", "", "1:1: “on” is missing here [missing-key]"),
    ],
)  # fmt: skip
def test_what_is_wrong_on_a_sheet(old: str, new: str, line: str) -> None:
    _, second, *_ = items()
    fill = {"second": second, "at": str(9 + len(second)), "after": str(10 + len(second))}
    changed = sheet().replace(old.format(**fill), new.format(**fill))
    assert line.format(**fill) in said(changed)


def test_one_judge_or_one_item_is_not_enough() -> None:
    second = items()[1]
    alone = sheet().split("  - role: theatre")[0]
    assert said(alone) == [
        "4:1: one judge alone says nothing about how sure a cut is; write two or more [bad-value]"
    ]
    one = "".join(line for line in sheet().splitlines(keepends=True) if f"  {second}:" not in line)
    assert said(one) == ["4:1: a cut needs two items or more that were rated [bad-value]"]


def test_a_practice_item_is_none_to_set_a_standard_on() -> None:
    practice = loaded(base_files()).items("practice")[0].item.item
    second = items()[1]
    assert any("there is no item" in each for each in said(sheet().replace(second, practice)))


def test_a_sheet_in_the_wrong_place_is_told_where_it_belongs() -> None:
    line = (
        "1:1: this file holds ratings of judges, which belongs in quizzes/standards/; move it there"
    )
    assert said(sheet(), "quizzes/assessments/rated.yaml")[0].startswith(line)
