"""A fixed sample of the mistakes of ``make mutate``, and each value a quarter off."""

from collections.abc import Iterator
from fractions import Fraction
from functools import cache

import pytest

from basinside.check.registry import RULE_BY_ID
from basinside.derive.meanings import settled_text
from basinside.model.item_kinds import NumberFrom
from basinside.model.quiz import Item
from basinside.model.words import ALL_LISTS
from tests.mutations.cuts import instead
from tests.mutations.drawn import DRAWN, drawn
from tests.mutations.judged import EXPECTED, FORM, Judge, named
from tests.mutations.kinds import FACTORS, KINDS, scaled, values_of

HELD = 0.95
SAMPLE = {kind: max(2, count // 10) for kind, count in DRAWN.items()}


@cache
def judge() -> Judge:
    return Judge()


def test_a_sample_of_mistakes_is_noticed() -> None:
    verdicts = [judge().judge(each) for each in drawn(judge().text, SAMPLE)]
    assert [each for each in verdicts if each.outcome == "missed"] == []
    counted = [each for each in verdicts if each.outcome != "harmless"]
    assert sum(each.outcome == "caught" for each in counted) / len(counted) >= HELD


def test_every_kind_of_mistake_says_which_rules_are_expected() -> None:
    assert set(EXPECTED) == {*KINDS, "harmless"}


@cache
def possible() -> tuple[dict[str, set[str]], dict[str, set[str]]]:
    """Return by kind what mistakes are called, and what they are about."""
    made = {kind: list(make(judge().text)) for kind, make in KINDS.items()}
    return (
        {kind: set(map(named, each)) for kind, each in made.items()},
        {kind: {one.about for one in each} for kind, each in made.items()},
    )


@pytest.mark.parametrize("row", EXPECTED["harmless"], ids=lambda row: row["because"][:30])
def test_harmless_mistakes_are_possible_and_say_why(row: dict[str, list[str]]) -> None:
    names, abouts = possible()
    kind = str(row["kind"])
    assert row["because"]
    assert row.get("mistakes") or row.get("about")
    assert set(row.get("mistakes", ())) <= names[kind]
    assert set(row.get("about", ())) <= abouts[kind]


def test_rules_that_are_expected_are_there_and_about_something_that_is_there() -> None:
    _, abouts = possible()
    for kind, rows in EXPECTED.items():
        if kind == "harmless":
            continue
        assert set(rows) <= {"any", *ALL_LISTS["action"], *abouts[kind]}, kind
        assert {rule for some in rows.values() for rule in some} <= set(RULE_BY_ID) - FORM, kind


def _sentences(item: Item) -> Iterator[str]:
    for option in item.options:
        yield option.text
        yield option.because or ""
    yield item.stem
    yield item.situation or ""


def _numbers(item: Item) -> set[str]:
    number = item.number
    asked = (number.right, *(each.number for each in number.mistakes)) if number else ()
    return {each.figure for each in asked if isinstance(each, NumberFrom)}


@pytest.mark.parametrize("factor", FACTORS, ids=lambda factor: f"times {float(factor)}")
def test_questions_that_name_a_value_stop_or_follow(factor: Fraction) -> None:
    """Change each value: every item that rests on it stops, no other does, sentences follow."""
    items = [asked.item for asked in judge().content.items()]
    figures = judge().content.figures
    for file, text, name, node in values_of(judge().text):
        changed = instead(text, node, scaled(node.value, factor))
        now, problems = judge().look_again(file, changed)
        assert now.figures[name].value != figures[name].value, name
        stopped = {
            item.item
            for item in items
            for rule, _, message in problems
            if rule == "key-contradicts-model" and item.item in message.split()[:2]
        }
        resting = {each.item for each in items if each.rests_on and name in each.rests_on.values}
        assert resting <= stopped, name
        assert stopped <= resting | {each.item for each in items if name in _numbers(each)}, name
        for each in items:
            for sentence in _sentences(each):
                same = settled_text(sentence, figures) == settled_text(sentence, now.figures)
                assert same != (f"{{{{ {name} " in sentence), (name, each.item)
