"""Sets in turn, against a day of cases played through set by set."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from heapq import heappop, heappush
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from basinside.science.caseload import sets_needed


@pytest.mark.parametrize(
    ("cases", "turnaround", "hours", "reserve", "sets"),
    [
        (6, 150, 8, 1, 3),  # a case each 80 min, 150 min away: two in turn and the reserve
        (4, 120, 8, 0, 1),  # ready just as the next case comes
        (4, 121, 8, 0, 2),  # a minute too late
        (1, 90, 24, 1, 2),
        (0.25, 150, 24, 1, 2),  # about 90 cases a year
        (0, 150, 8, 2, 2),  # no cases: the reserve alone
        (10, 1440, 8, 0, 30),  # three days of work: nothing is made ready while it is closed
        (3, 0.1 * 3 * 60, 0.9, 0, 1),  # 54 minutes: not one set more for the last figure of a float
    ],
)
def test_sets_are_what_is_counted_by_hand(
    cases: float, turnaround: float, hours: float, reserve: int, sets: int
) -> None:
    assert sets_needed(cases, round(turnaround, 6), hours, reserve) == sets


def played(arrivals: Iterator[Fraction], turnaround: Fraction) -> int:
    """Play cases through: take a set that is back, or else buy one."""
    owned, away = 0, list[Fraction]()
    for at in arrivals:
        if away and away[0] <= at:
            heappop(away)
        else:
            owned += 1
        heappush(away, at + turnaround)
    return owned


CASES = st.integers(min_value=1, max_value=40)
MINUTES = st.integers(min_value=1, max_value=900)
HOURS = st.integers(min_value=1, max_value=24)


@given(CASES, MINUTES, HOURS, st.integers(min_value=0, max_value=3))
def test_as_many_as_a_long_run_of_cases_takes(
    cases: int, turnaround: int, hours: int, reserve: int
) -> None:
    apart = Fraction(hours * 60, cases)
    arrivals = (apart * number for number in range(turnaround * cases // (hours * 60) + 5))
    assert sets_needed(cases, turnaround, hours, reserve) == (
        played(arrivals, Fraction(turnaround)) + reserve
    )


@given(CASES, MINUTES, HOURS)
def test_enough_for_days_with_nights_between(cases: int, turnaround: int, hours: int) -> None:
    """Where work goes on at night it takes no more than that."""
    apart = Fraction(hours * 60, cases)
    arrivals = (day * 1440 + apart * number for day in range(3) for number in range(cases))
    assert played(arrivals, Fraction(turnaround)) <= sets_needed(cases, turnaround, hours, 0)


@given(CASES, MINUTES, HOURS)
def test_more_work_or_less_time_never_needs_fewer(cases: int, turnaround: int, hours: int) -> None:
    sets = sets_needed(cases, turnaround, hours, 0)
    assert sets >= 1
    assert sets_needed(cases + 1, turnaround, hours, 0) >= sets
    assert sets_needed(cases, turnaround + 1, hours, 0) >= sets
    if hours > 1:
        assert sets_needed(cases, turnaround, hours - 1, 0) >= sets
    assert sets_needed(cases, turnaround, hours, 2) == sets + 2


BAD: tuple[Any, ...] = (-1, float("nan"), float("inf"), True, False, "3", None, 1e6)


@pytest.mark.parametrize("number", BAD)
def test_a_number_outside_its_range_is_an_error(number: Any) -> None:
    with pytest.raises(ValueError, match=r"^cases_per_day must be"):
        sets_needed(number, 150, 8, 1)
    with pytest.raises(ValueError, match=r"^turnaround_minutes must be"):
        sets_needed(6, number, 8, 1)
    with pytest.raises(ValueError, match=r"^hours_open must be"):
        sets_needed(6, 150, number, 1)


@pytest.mark.parametrize("number", [*BAD[:-1], 1.5, 1.0])
def test_a_reserve_that_is_no_whole_number_is_an_error(number: Any) -> None:
    with pytest.raises(ValueError, match=r"^ready_reserve must be a whole number"):
        sets_needed(6, 150, 8, number)


def test_no_time_at_all_is_an_error() -> None:
    with pytest.raises(ValueError, match=r"^turnaround_minutes must be"):
        sets_needed(6, 0, 8, 1)
    with pytest.raises(ValueError, match=r"^hours_open must be"):
        sets_needed(6, 150, 0, 1)
    with pytest.raises(ValueError, match=r"^hours_open must be"):
        sets_needed(6, 150, 24.5, 1)
