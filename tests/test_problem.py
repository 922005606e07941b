"""A problem is a value with a place; printed it is one line."""

import pytest

from basinside.problem import Level, Place, Placed, Problem, any_stop


def problem(level: Level = Level.STOP, **more: str) -> Problem:
    return Problem(place=Place("a.yaml"), rule="some-rule", level=level, message="it is so", **more)


@pytest.mark.parametrize(
    ("level", "waived", "stops"),
    [
        (Level.INFO, "", False),
        (Level.WARN, "", False),
        (Level.STOP, "", True),
        (Level.STOP, "by the lead", False),
        (Level.NEVER, "", True),
        (Level.NEVER, "by the lead", True),
    ],
)
def test_what_stops_a_build(level: Level, waived: str, stops: bool) -> None:
    found = problem(level, waived_by=waived)
    assert found.stops is stops
    assert any_stop([problem(Level.INFO), found]) is stops
    assert not any_stop([])


def test_a_line_has_place_words_mend_rule_and_waiver() -> None:
    assert str(Placed(problem=problem(), line=4, column=12)) == "a.yaml:4:12: it is so [some-rule]"
    whole = problem(hint="Mend it", waived_by="waived until June")
    assert (
        str(Placed(problem=whole, line=1, column=1))
        == "a.yaml:1:1: it is so. Mend it [some-rule] (waived until June)"
    )


def test_a_line_is_one_line_whatever_was_written() -> None:
    odd = Problem(
        place=Place("a.yaml"), rule="r", level=Level.WARN, message="it\nis\tso\x1b[31m\u200b here"
    )
    assert str(Placed(problem=odd, line=1, column=1)) == "a.yaml:1:1: it is so [31m here [r]"


def test_lines_stand_in_the_order_of_places_then_rules() -> None:
    def placed(file: str, line: int, column: int, rule: str) -> Placed:
        found = Problem(place=Place(file), rule=rule, level=Level.WARN, message="m")
        return Placed(problem=found, line=line, column=column)

    right = [
        placed("a.yaml", 2, 1, "z"),
        placed("a.yaml", 10, 1, "b"),
        placed("a.yaml", 10, 2, "a"),
        placed("a.yaml", 10, 2, "b"),
        placed("b.yaml", 1, 1, "a"),
    ]
    assert sorted(right, key=lambda each: each.order) == right


def test_a_place_leads_on() -> None:
    place = Place("a.yaml", ("stages", 1))
    assert place.at("steps", 0) == Place("a.yaml", ("stages", 1, "steps", 0))
    assert place.path == ("stages", 1)
