"""What pydantic objects to is said as an author's line, at the place that was written."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from basinside.load.entries import CUT_IN_BRACKETS, read_entry
from basinside.load.marked_yaml import read_yaml
from basinside.model.figure import FigureFile
from basinside.model.handbook import Handbook
from basinside.model.instrument import Instrument
from basinside.model.procedure import Procedure
from basinside.model.quiz import Assessment, QuestionFile
from basinside.problem import Place, Problem
from basinside.quantity import parse_quantity

FILE = "content/x.yaml"
ITEM = """\
topic: bath
pool: practice
items:
  - item: one
    kind: choice
    thinking: apply
    objective: timing
    stem: How long?
    options:
      - right: Long
      - wrong: Short
"""


def read(model: Any, text: str) -> tuple[Any, tuple[Problem, ...]]:
    data, problems = read_yaml(text.encode(), FILE)
    assert problems == ()
    return read_entry(model, data, FILE)


def said(model: Any, text: str) -> list[tuple[tuple[str | int, ...], str, str]]:
    _, problems = read(model, text)
    return [(each.place.path, each.message, each.hint) for each in problems]


def test_an_entry_is_typed_and_knows_its_place() -> None:
    entry, problems = read(FigureFile, "figures:\n  a.b: {is: x, value: 20 min, basis: computed}\n")
    assert problems == ()
    assert entry.figures["a.b"].value == parse_quantity("1200 s")
    assert entry.figures["a.b"].place == Place(FILE, ("figures", "a.b"))


def test_an_edition_stays_text() -> None:
    entry, _ = read(QuestionFile, ITEM + "    rests_on: {read_in: 2026.10}\n")
    assert entry.items[0].rests_on.read_in == "2026.10"


@pytest.mark.parametrize(
    ("written", "meant"), [("yes", True), ("No", False), ("TRUE", True), ("false", False)]
)
def test_yes_and_no_are_words(written: str, meant: bool) -> None:
    entry, problems = read(QuestionFile, ITEM + f"    critical: {written}\n")
    assert problems == ()
    assert entry.items[0].critical is meant


@pytest.mark.parametrize("written", ["y", "on", "1", "ja", "yes please"])
def test_anything_else_is_asked_again(written: str) -> None:
    assert said(QuestionFile, ITEM + f"    critical: {written}\n") == [
        (("items", 0, "critical"), f"critical cannot be “{written}”", "Write yes or no.")
    ]


def test_the_place_of_an_item_does_not_depend_on_its_kind() -> None:
    assert said(QuestionFile, ITEM.replace("choice", "choise")) == [
        (
            ("items", 0, "kind"),
            "kind: “choise” is not a word of the list",
            "Did you mean “choice”?",
        )
    ]
    whole = "topic: a\npool: practice\nitems:\n  - scenario: s\n    situation: x\n    itemz: []\n"
    assert [each[0] for each in said(QuestionFile, whole)] == [
        ("items", 0, "items"),
        ("items", 0, "itemz"),
    ]


def test_a_key_is_looked_for_among_the_keys_that_fit_its_neighbours() -> None:
    near = {
        "negativ": "negative",
        "critcal": "critical",
        "rest_on": "rests_on",
        "situaton": "situation",
    }
    for wrong, right in near.items():
        assert said(QuestionFile, ITEM + f"    {wrong}: x\n") == [
            (("items", 0, wrong), f"there is no key “{wrong}” here", f"Did you mean “{right}”?")
        ]


def test_words_far_from_every_word_of_the_list_get_the_list() -> None:
    (found,) = said(QuestionFile, ITEM.replace("practice", "zzz"))
    assert found == (("pool",), "pool: “zzz” is not one of: practice, assessment", "")


def test_an_entry_in_brackets_that_names_nothing_says_why() -> None:
    text = "procedure: a\ninstrument: b\nroute: c\nparts: [the tip, and body]\nstages: []\n"
    _, problems = read_yaml(text.encode(), FILE)
    assert [each.rule for each in problems] == ["sentence-cut"]
    text = text.replace("and body", "its body")
    assert said(Procedure, text) == [
        (("parts", n), f"“{each}” is no id; write lower-case words with hyphens", CUT_IN_BRACKETS)
        for n, each in enumerate(("the tip", "its body"))
    ]


def test_each_shape_has_its_words() -> None:
    text = """\
assessment: core
title: [a]
version: two
items: {a: b}
forms: 1
pass: 80 %
blueprint: {topics: {cleaning: 130 %}}
"""
    assert [each[1] for each in said(Assessment, text)] == [
        "title must be a sentence or a word, not keys or a list",
        "version cannot be “two”",
        "items has the wrong shape",
        "pass must be keys with values, not a sentence or a list",
        "cleaning cannot be “130 %”",
    ]


def test_a_file_that_is_a_list_is_told_a_key_to_begin_with() -> None:
    data, _ = read_yaml(b"- a\n", FILE)
    entry, problems = read_entry(Handbook, data, FILE)
    assert entry is None
    assert [each.rule for each in problems] == ["wrong-shape"]
    assert problems[0].message.startswith("the file must hold keys such as “")


def test_what_the_reader_of_yaml_said_is_not_said_again() -> None:
    data, problems = read_yaml(b"instrument: bulb\nname:\nlabel: single use\nunits: [a, ~]\n", FILE)
    assert [each.rule for each in problems] == ["value-missing", "value-missing"]
    assert read_entry(Instrument, data, FILE) == (None, ())


DAYS = st.dates().map(lambda day: day.isoformat())
LINES = st.dictionaries(
    st.sampled_from(["handbook", "title", "edition", "issued", "review_by", "clinic", "policy"]),
    st.sampled_from(["a", "2026.2", "{altitude: 10 m}", "[{scope: all}]", "[]", "{}", "2 m"])
    | DAYS,
)


@given(LINES)
def test_any_handbook_gives_an_entry_or_a_problem_never_both(lines: dict[str, str]) -> None:
    text = "".join(f"{key}: {value}\n" for key, value in lines.items()) or "a: b\n"
    data, problems = read_yaml(text.encode(), FILE)
    entry, found = read_entry(Handbook, data, FILE)
    assert problems == ()
    assert (entry is None) == bool(found)
    assert all(each.place.file == FILE for each in found)


def test_long_or_odd_words_are_shown_short_and_plain() -> None:
    (found,) = said(
        QuestionFile, ITEM.replace("kind: choice", 'kind: "a\\u200b  b' + "c" * 200 + '"')
    )
    assert found[1].startswith("kind: “a b" + "c" * 76 + "…” is not one of")
