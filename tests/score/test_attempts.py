"""Attempts are scored from answers and keys alone, and strangers are turned away in words."""

from typing import Any

import pytest

from basinside.render.score_words import attempt_lines
from basinside.score.attempts import score_attempt
from basinside.score.refusal import NotScoredError
from tests.score.made import DIGEST, HEAD, attempt, form, keys, scored


def test_all_right_is_passed_with_every_point() -> None:
    result = scored(attempt())
    assert (result.points, result.of_points, result.needed) == (300, 300, 240)
    assert (result.items_passed, result.items_needed, result.passed) == (5, 4, True)
    assert [(each.topic, each.passed, each.of) for each in result.topics] == [
        ("cleaning", 3, 3),
        ("storage", 2, 2),
    ]


def test_enough_points_pass_and_one_fewer_does_not() -> None:
    assert scored(attempt("AAAAB")).passed
    assert not scored(attempt("AAABB")).passed


def test_an_item_left_open_has_no_points() -> None:
    result = scored(attempt("AAAA-"))
    assert result.points == 240
    assert result.items[4].letters == ""


def test_a_critical_item_missed_fails_whatever_the_points() -> None:
    result = scored(attempt("AABAA"))
    assert result.points >= result.needed
    assert not result.passed
    assert [each.item for each in result.critical_missed] == ["third"]
    said = "\n".join(attempt_lines(result))
    assert "Critical question missed: What of third? (third; answered B)" in said


def test_an_unsafe_answer_fails_and_is_named_by_its_text() -> None:
    result = scored(attempt("ACAAA"))
    assert result.points >= result.needed
    assert not result.passed
    assert result.unsafe_chosen[0].unsafe == ("second C",)
    assert "Unsafe answer chosen: “second C” (second)" in "\n".join(attempt_lines(result))


def test_items_needed_are_rounded_up() -> None:
    assert scored(attempt(), percent=81).items_needed == 5


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        ({"handbook": "lowfell"}, "handbook lowfell"),
        ({"id": "advanced"}, "assessment advanced"),
        ({"form": "B"}, "form B"),
        ({"edition": "2026.1"}, "edition 2026.1"),
        ({"form_digest": "form-v1:" + "G" * 43}, "another sealing"),
        ({"date": "2026-02-31"}, "no calendar"),
    ],
)
def test_an_attempt_on_something_else_is_refused(changes: dict[str, Any], says: str) -> None:
    with pytest.raises(NotScoredError, match=says):
        scored(attempt(**changes))


def test_a_self_test_is_refused_by_name() -> None:
    practice = attempt(kind="self-test", id="cleaning", form=None, form_digest=None)
    with pytest.raises(NotScoredError, match="self-test on cleaning"):
        scored(practice)


def test_other_items_than_the_forms_are_refused() -> None:
    short = attempt().plain()
    short["items"] = list(reversed(short["items"]))  # type: ignore[call-overload]
    with pytest.raises(NotScoredError, match="not those of the form"):
        scored(type(attempt()).from_plain(short))


def test_an_option_that_is_not_there_is_refused() -> None:
    plain: Any = attempt().plain()
    plain["items"][0]["chosen"] = [7]
    with pytest.raises(NotScoredError, match="first names an option"):
        scored(type(attempt()).from_plain(plain))


@pytest.mark.parametrize("name", sorted(HEAD))
def test_keys_of_another_form_are_refused(name: str) -> None:
    other = {**keys(), name: "other"}
    with pytest.raises(NotScoredError, match=name):
        score_attempt(attempt(), form(), other, form_digest=DIGEST, answers_digest="")
