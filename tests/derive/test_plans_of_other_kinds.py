"""An order, a number and pairs compile to conditions that pass what is right and nothing else."""

from fractions import Fraction
from itertools import permutations
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from basinside.derive.plans import marking_plan
from basinside.marking import evaluate
from basinside.model.content import Content
from basinside.model.item_kinds import NumberAsked
from basinside.model.quiz import Item
from basinside.quantity import parse_quantity
from basinside.units import UNITS, Kind, typed_units
from tests.plain.clinic import patched, read

WRITTEN = (Path(__file__).parents[1] / "check" / "kinds.yaml").read_text(encoding="utf-8")


def clinic() -> tuple[Content, dict[str, Item]]:
    looked = read(patched({"files": {"quizzes/questions/kinds.yaml": WRITTEN}}))
    return looked.content, {each.item.item: each.item for each in looked.content.items()}


def test_an_order_passes_when_every_pair_that_matters_is_kept() -> None:
    plan = marking_plan(clinic()[1]["bath-order"])
    assert plan["options"] == 4
    assert plan["pass_all"] == [{"before": [0, 1]}, {"before": [1, 2]}]
    assert plan["fail_any"] == []
    passing = [
        order for order in permutations(range(4)) if evaluate(plan, {"order": list(order)}).passed
    ]
    # Writing it down may come anywhere; the three others have one order.
    assert sorted(passing) == [(0, 1, 2, 3), (0, 1, 3, 2), (0, 3, 1, 2), (3, 0, 1, 2)]


def test_every_neighbour_matters_when_nothing_is_said() -> None:
    plain = WRITTEN[: WRITTEN.index("    matters:")] + WRITTEN[WRITTEN.index("    because: Each") :]
    looked = read(patched({"files": {"quizzes/questions/kinds.yaml": plain}}))
    item = next(each.item for each in looked.content.items() if each.item.item == "bath-order")
    plan = marking_plan(item)
    passing = [o for o in permutations(range(4)) if evaluate(plan, {"order": list(o)}).passed]
    assert passing == [(0, 1, 2, 3)]


def test_a_number_follows_its_value_and_its_unit() -> None:
    content, items = clinic()
    plan = marking_plan(items["two-baths"], figures=content.figures)
    assert plan["pass_all"] == [{"between": {"low": "40", "high": "45"}}]
    worth = {each: evaluate(plan, {"number": each}).points for each in ("39.99", "40", "45", "46")}
    assert worth == {"39.99": 0, "40": 60, "45": 60, "46": 0}
    # A value that is missing is a gap: nothing passes, and nothing breaks.
    nothing = marking_plan(items["two-baths"])
    assert not any(evaluate(nothing, {"number": each}).passed for each in ("0", "1", "40"))


def number(right: str, low: str = "", high: str = "") -> Item:
    at = ("x", ())
    accept = {"@": at, **({"from": low} if low else {}), **({"to": high} if high else {})}
    return Item.model_validate(
        {
            "@": at,
            "item": "i",
            "kind": "numeric",
            "thinking": "apply",
            "objective": "o",
            "stem": "s",
            "number": {
                "@": at,
                "right": right,
                "unsafe": "neither",
                "because": "b",
                **({"accept": accept} if low or high else {}),
            },
        }
    )


@pytest.mark.parametrize(
    ("right", "low", "high", "between"),
    [
        ("0.5 % w/v", "", "", {"low": "0.5", "high": "0.5"}),
        ("100 mL", "0.09 L", "", {"low": "90", "high": "100"}),
        ("1 h 40 min", "", "2 h", {"low": "100", "high": "120"}),
        ("-5 °C", "-6 °C", "0 °C", {"low": "-6", "high": "0"}),
        # 1 psi is 6.894757293... kPa: an end without an end itself is rounded to the inner side.
        (
            "7 kPa gauge",
            "1 psi gauge",
            "",
            {"low": "6.894757293169", "high": "7"},
        ),
    ],
)
def test_what_is_accepted_is_written_exactly(
    right: str, low: str, high: str, between: dict[str, str]
) -> None:
    assert marking_plan(number(right, low, high))["pass_all"] == [{"between": between}]


@given(st.integers(0, 10**6), st.integers(0, 3), st.integers(0, 10**6), st.integers(0, 10**6))
def test_ends_hold_what_lies_between(whole: int, places: int, less: int, more: int) -> None:
    right = Fraction(whole, 10**places)
    low, high = max(right - Fraction(less, 1000), Fraction(0)), right + Fraction(more, 1000)
    written = [f"{float(each):.3f} mL" for each in (right, low, high)]
    plan = marking_plan(number(*written))
    values = [parse_quantity(each).number for each in written]
    for value in (values[1], values[0], values[2]):
        assert evaluate(plan, {"number": f"{float(value):.3f}"}).passed
    assert not evaluate(plan, {"number": f"{float(values[2]) + 0.001:.3f}"}).passed


def test_pairs_pass_whole_and_name_what_is_unsafe() -> None:
    plan = marking_plan(clinic()[1]["what-for-what"])
    # Right sides: Brush, Chlorine, Steam; left sides: tip, body, cap.
    assert plan["options"] == 9
    assert [each["has"] for each in plan["pass_all"] if "has" in each] == [0, 4, 6]
    assert plan["fail_any"] == [{"has": 2}]
    assert evaluate(plan, {"chosen": [0, 4, 6]}).passed
    assert evaluate(plan, {"chosen": [0, 4]}).points == 0
    assert evaluate(plan, {"chosen": [0, 4, 5, 6]}).points == 0
    assert evaluate(plan, {"chosen": [2, 4, 6]}).unsafe == (2,)


def test_an_answer_of_another_kind_is_worth_nothing() -> None:
    content, items = clinic()
    answers: tuple[dict[str, Any], ...] = (
        {"chosen": [0]},
        {"order": [0, 1, 2, 3]},
        {"number": "40"},
        {"chosen": [0, 4, 6]},
    )
    right = {"bath-order": 1, "two-baths": 2, "what-for-what": 3}
    for name, own in right.items():
        plan = marking_plan(items[name], figures=content.figures)
        passed = [n for n, answer in enumerate(answers) if evaluate(plan, answer).passed]
        assert passed == [own], name


@pytest.mark.parametrize("unit", [name for name, unit in UNITS.items() if not unit.steps])
def test_a_unit_may_be_typed_as_people_write_it(unit: str) -> None:
    own = UNITS[unit]
    worth = typed_units(unit)
    assert all(name == name.lower().strip() and name for name in worth)
    assert all(worth[name.lower()] == 1 for name in (own.one, own.many) if name)
    if own.kind is not Kind.COUNT:
        for name in worth:
            spelling = next((each for each in UNITS if each.lower() == name), None)
            if spelling:
                assert worth[name] == UNITS[spelling].factor / own.factor


def test_what_the_kind_says_may_be_left_out() -> None:
    assert typed_units("ppm available chlorine")["%"] == 10_000
    assert typed_units("kPa gauge")["bar"] == 100
    assert typed_units("mL")["litres"] == 1000
    assert "spoons" not in typed_units("tablet")


def test_a_number_asked_for_knows_its_bounds() -> None:
    asked = number("20 min", "", "1 h").number
    assert isinstance(asked, NumberAsked)
    bounds = asked.bounds({})
    assert bounds is not None
    assert [each.text().replace("\u00a0", " ") for each in bounds] == ["20 min", "20 min", "60 min"]
    # Ends of another kind are told by a rule, and leave a gap here.
    other = number("20 min", "", "1 L").number
    assert other is not None
    assert other.bounds({}) is None
