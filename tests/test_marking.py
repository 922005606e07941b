"""Points worked out by hand: what an answer is worth, whatever both programs agree on."""

from typing import Any

import pytest

from basinside.marking import evaluate

ALL_OR_NONE: dict[str, Any] = {
    "item": "late-part",
    "critical": True,
    "worth": 60,
    "options": 3,
    "points": {"kind": "all-or-none"},
    "pass_all": [{"has": 0}, {"hasnt": 1}, {"hasnt": 2}],
    "fail_any": [{"has": 1}],
}
THREE_OF_FIVE: dict[str, Any] = {
    **ALL_OR_NONE,
    "critical": False,
    "options": 5,
    "points": {"kind": "plus-minus", "keys": [0, 2, 4]},
    "pass_all": [{"has": 0}, {"hasnt": 1}, {"has": 2}, {"hasnt": 3}, {"has": 4}],
    "fail_any": [{"has": 3}],
}
IN_ORDER: dict[str, Any] = {
    **ALL_OR_NONE,
    "pass_all": [{"before": [0, 1]}, {"before": [1, 2]}],
    "fail_any": [],
}
AMOUNT: dict[str, Any] = {
    **ALL_OR_NONE,
    "options": 0,
    "pass_all": [{"between": {"low": "10", "high": "12.5"}}],
    "fail_any": [{"between": {"high": "5"}}],
}


@pytest.mark.parametrize(
    ("plan", "answer", "points", "unsafe"),
    [
        (ALL_OR_NONE, {"chosen": [0]}, 60, ()),
        (ALL_OR_NONE, {"chosen": [2]}, 0, ()),
        (ALL_OR_NONE, {"chosen": [1]}, 0, (1,)),
        (ALL_OR_NONE, {"chosen": [0, 1]}, 0, (1,)),
        (ALL_OR_NONE, {}, 0, ()),
        # floor(60 x max(0, hits - false ticks) / 3)
        (THREE_OF_FIVE, {"chosen": [0, 2, 4]}, 60, ()),
        (THREE_OF_FIVE, {"chosen": [0, 2]}, 40, ()),
        (THREE_OF_FIVE, {"chosen": [0, 1, 2, 4]}, 40, ()),
        (THREE_OF_FIVE, {"chosen": [1]}, 0, ()),
        (THREE_OF_FIVE, {"chosen": [0, 2, 3, 4]}, 0, (3,)),
        (THREE_OF_FIVE, {"chosen": []}, 0, ()),
        (IN_ORDER, {"order": [0, 1, 2]}, 60, ()),
        (IN_ORDER, {"order": [1, 0, 2]}, 0, ()),
        (IN_ORDER, {"order": [0, 2, 1]}, 0, ()),
        (AMOUNT, {"number": "10"}, 60, ()),
        (AMOUNT, {"number": "12.50"}, 60, ()),
        (AMOUNT, {"number": "12.51"}, 0, ()),
        (AMOUNT, {"number": "9.99"}, 0, ()),
        (AMOUNT, {"number": "4"}, 0, ()),
    ],
)
def test_points_by_hand(
    plan: dict[str, Any], answer: dict[str, Any], points: int, unsafe: tuple[int, ...]
) -> None:
    outcome = evaluate(plan, answer)
    assert (outcome.points, outcome.unsafe) == (points, unsafe)
    assert outcome.passed == (points == 60)


def test_an_unsafe_option_fails_what_would_otherwise_pass() -> None:
    lenient = {**THREE_OF_FIVE, "pass_all": [{"has": 0}], "points": {"kind": "all-or-none"}}
    assert evaluate(lenient, {"chosen": [0]}).points == 60
    assert evaluate(lenient, {"chosen": [0, 3]}).points == 0


def test_half_points_are_rounded_down() -> None:
    seven = {
        **ALL_OR_NONE,
        "options": 7,
        "points": {"kind": "plus-minus", "keys": list(range(7))},
        "pass_all": [{"has": n} for n in range(7)],
        "fail_any": [],
    }
    assert evaluate(seven, {"chosen": [0]}).points == 8  # 60 / 7 = 8.57
    assert evaluate(seven, {"chosen": [0, 1, 2]}).points == 25  # 25.7
