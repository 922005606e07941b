"""An item becomes a marking plan, whose worth both programs count alike."""

from fractions import Fraction
from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from basinside.derive.plans import ITEM_WORTH, marking_plan
from basinside.marking import evaluate, items_needed
from basinside.model.quiz import Item


def item(kind: str, marks: str, *, critical: bool = False) -> Item:
    """Return an item with an option for each mark: R right, W wrong, U wrong and unsafe."""
    at = ("x", ())
    options = tuple(
        {"@": at, "right" if mark == "R" else "wrong": f"o{n}"}
        | ({"unsafe": "yes"} if mark == "U" else {})
        for n, mark in enumerate(marks)
    )
    return Item.model_validate(
        {
            "@": at,
            "item": "i",
            "kind": kind,
            "thinking": "apply",
            "objective": "o",
            "stem": "s",
            "critical": "yes" if critical else "no",
            "options": options,
        }
    )


def test_a_choice() -> None:
    assert marking_plan(item("choice", "RWU", critical=True)) == {
        "item": "i",
        "critical": True,
        "worth": 60,
        "options": 3,
        "points": {"kind": "all-or-none"},
        "pass_all": [{"has": 0}, {"hasnt": 1}, {"hasnt": 2}],
        "fail_any": [{"has": 2}],
    }


def test_a_multiple_shares_its_points_unless_it_is_critical() -> None:
    assert marking_plan(item("multiple", "RWR"))["points"] == {"kind": "plus-minus", "keys": [0, 2]}
    assert marking_plan(item("multiple", "RWR", critical=True))["points"] == {"kind": "all-or-none"}


def test_positions_follow_the_order_that_is_shown() -> None:
    asked = item("multiple", "RWRU")
    shown = [asked.options[n] for n in (3, 2, 1, 0)]
    plan = marking_plan(asked, shown)
    assert plan["points"]["keys"] == [1, 3]
    assert plan["fail_any"] == [{"has": 0}]


MARKS = st.text("RWU", min_size=2, max_size=7).filter(lambda marks: "R" in marks)


@given(MARKS, st.booleans(), st.data())
def test_a_multiple_is_worth_hits_less_false_ticks(
    marks: str, critical: bool, data: st.DataObject
) -> None:
    plan = marking_plan(item("multiple", marks, critical=critical))
    chosen = data.draw(st.sets(st.integers(0, len(marks) - 1)))
    keys = {n for n, mark in enumerate(marks) if mark == "R"}
    unsafe = sorted(n for n in chosen if marks[n] == "U")
    if unsafe or not chosen:
        worth = 0
    elif critical:
        worth = ITEM_WORTH if chosen == keys else 0
    else:
        hits, false = len(chosen & keys), len(chosen - keys)
        worth = int(Fraction(ITEM_WORTH * max(0, hits - false), len(keys)))
    told = evaluate(plan, {"chosen": sorted(chosen)} if chosen else {})
    assert (told.points, told.passed, list(told.unsafe)) == (worth, worth == ITEM_WORTH, unsafe)


def test_ticking_everything_never_passes() -> None:
    for marks in ("RW", "RRW", "RRRRW"):
        plan = marking_plan(item("multiple", marks))
        assert not evaluate(plan, {"chosen": list(range(len(marks)))}).passed


def test_only_the_keys_pass() -> None:
    plan = marking_plan(item("multiple", "RRWW"))
    every = [set(each) for size in range(1, 5) for each in combinations(range(4), size)]
    passing = [each for each in every if evaluate(plan, {"chosen": sorted(each)}).passed]
    assert passing == [{0, 1}]


@pytest.mark.parametrize(
    ("items", "percent", "needed"),
    # assessment science, C10: 56 % of 25; 56 % of 50; 7 % of 100; 80 % of 15. Then the edges.
    [(25, 56, 14), (50, 56, 28), (100, 7, 7), (15, 80, 12), (12, 80, 10), (12, 100, 12), (3, 1, 1)],
)
def test_a_cut_is_a_whole_number_of_items_rounded_up(items: int, percent: int, needed: int) -> None:
    assert items_needed(percent, items) == needed
