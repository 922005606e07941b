"""Was it held hot enough, long enough, without a break: cases by hand, and another way of it."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from basinside.science.lethality import f0_minutes
from basinside.science.steam import CycleJudgement, judge_cycle


def judged(*readings: tuple[Any, Any], needed: Any = 30, hot: Any = 121) -> CycleJudgement:
    minutes, celsius = zip(*readings, strict=True)
    return judge_cycle(minutes, celsius, hot, needed)


def test_long_enough_in_one_stretch_is_held() -> None:
    found = judged((0, 100), (10, 121), (45, 122), (50, 100))
    assert found == CycleJudgement(
        held=True,
        broken_at=None,
        reached_at=10,
        held_from=10,
        held_minutes=float(35 + Fraction(5, 22)),  # 122 to 100 in 5 minutes crosses 121 then
    )


def test_exactly_long_enough_is_held() -> None:
    assert judged((0, 121), (30, 121)).held
    assert judged((0, 100), (10, 121), (40, 121), (41, 100)).held
    assert judged((0, 121), (30, 121)).held_minutes == 30


def test_a_hold_in_tenths_is_counted_as_it_is_written() -> None:
    assert 40.3 - 10.3 < 30  # what plain floats would call too short
    assert judged((10.3, 121), (40.3, 121)).held
    assert not judged((10.3, 121), (40.3, 121), needed=30.000000000001).held


def test_a_hair_too_short_is_not_held_and_never_rounded_up() -> None:
    short = judged((0, 121), (Decimal("29.99999999999999999999"), 121))
    assert not short.held
    assert short.held_minutes < 30
    third = judged((0, 120), (1, 123), (3, 123), needed=Fraction(8, 3) + Fraction(1, 10**30))
    assert not third.held
    assert third.held_minutes < 8 / 3 + 1e-15


def test_a_hair_below_the_temperature_breaks_it() -> None:
    found = judged((0, 121), (20, 121), (21, 120.999999), (22, 121), (40, 121))
    assert not found.held
    assert found.broken_at == 20
    assert (found.held_from, found.held_minutes) == (0, 20)


def test_touching_the_temperature_from_above_is_no_break() -> None:
    found = judged((0, 122), (15, 121), (30, 122))
    assert found.held
    assert found.broken_at is None


def test_never_reached_is_not_held_and_nothing_broke() -> None:
    found = judged((0, 20), (10, 120.9), (60, 120.9), (70, 50))
    assert found == CycleJudgement(
        held=False, broken_at=None, reached_at=None, held_from=None, held_minutes=0
    )


def test_only_touched_from_below_is_reached_and_broken_there() -> None:
    found = judged((0, 100), (10, 121), (20, 100))
    assert (found.held, found.reached_at, found.broken_at) == (False, 10, 10)
    assert found.held_minutes == 0


def test_a_record_that_begins_at_the_temperature_and_cools_broke_at_once() -> None:
    found = judged((0, 121), (10, 100))
    assert (found.held, found.reached_at, found.broken_at) == (False, 0, 0)


def test_crossings_between_readings_are_on_the_line() -> None:
    found = judged((0, 111), (10, 131), (20, 131), (30, 101), needed=18)
    assert found.reached_at == 5
    assert found.broken_at is None
    assert found.held_minutes == not_above(Fraction(20) + Fraction(10, 3) - 5)
    assert found.held
    late = judged((0, 111), (10, 131), (20, 131), (30, 101), needed=19)
    assert not late.held
    assert late.broken_at == pytest.approx(20 + 10 / 3)


def not_above(value: Fraction) -> float:
    near = float(value)
    assert Fraction(near) <= value  # else this case would have to be written otherwise
    return near


def test_a_record_that_ends_hot_but_early_is_not_held_and_did_not_break() -> None:
    found = judged((0, 121), (29, 121))
    assert (found.held, found.broken_at, found.held_minutes) == (False, None, 29)


def test_a_second_stretch_that_is_long_enough_is_held_and_the_first_break_is_told() -> None:
    found = judged((0, 121), (10, 121), (12, 119), (14, 121), (44, 121), (45, 100))
    assert found.held
    assert (found.reached_at, found.broken_at, found.held_from) == (0, 10, 14)
    assert found.held_minutes == 30


def test_two_short_stretches_are_not_added_up() -> None:
    found = judged((0, 121), (20, 121), (21, 110), (22, 121), (42, 121), (43, 100))
    assert not found.held
    assert (found.broken_at, found.held_from, found.held_minutes) == (20, 0, 20)


def test_a_break_after_the_time_was_complete_is_none() -> None:
    found = judged((0, 121), (30, 121), (31, 100), (32, 121), (80, 121))
    assert found.held
    assert found.broken_at is None
    assert found.held_from == 0  # the first that was enough, not the longest
    assert found.held_minutes == 48


def test_the_published_times_for_121_degrees() -> None:
    # Domain facts, section 3.1, ST-03, "V": 20 min unwrapped, 30 min wrapped; CDC 2008 table 7,
    # "V": 30 min at 121 °C and 15 min at 132 °C for wrapped instruments in a gravity vessel.
    run = ((0, 90), (10, 121), (31, 121), (40, 90))
    assert judged(*run, needed=20).held
    assert not judged(*run, needed=30).held
    hotter = ((0, 90), (12, 132), (27, 132), (35, 90))
    assert judged(*hotter, needed=15, hot=132).held
    assert not judged(*hotter, needed=30, hot=121).held


def test_a_mountain_run_at_the_gauge_of_the_sea_is_not_held() -> None:
    # Section 3.4, "C": 15 psi gauge at 1,524 m is 118.22 °C; its F0 of 15.46 releases no load.
    run = ((0, 118.22), (30, 118.22))
    assert not judged(*run).held
    assert f0_minutes([0, 30], [118.22, 118.22]) > 15


TENTHS = st.integers(min_value=1150, max_value=1250).map(lambda tenths: Fraction(tenths, 10))
GAPS = st.integers(min_value=1, max_value=50).map(lambda tenths: Fraction(tenths, 10))
RUNS = st.lists(st.tuples(GAPS, TENTHS), min_size=2, max_size=12)


def hot_times(run: list[tuple[Fraction, Fraction]], hot: Fraction) -> list[list[Fraction]]:
    """Find the hot part of each line, then join those that touch: another way to the same."""
    joined: list[list[Fraction]] = []
    for (t1, c1), (t2, c2) in pairwise(run):
        low, high = Fraction(0), Fraction(1)
        if c1 < hot and c2 < hot:
            continue
        if c1 != c2:
            share = (hot - c1) / (c2 - c1)
            low, high = (max(low, share), high) if c2 > c1 else (low, min(high, share))
        part = [t1 + (t2 - t1) * low, t1 + (t2 - t1) * high]
        if joined and joined[-1][1] == part[0]:
            joined[-1][1] = part[1]
        else:
            joined.append(part)
    return joined


@given(RUNS, TENTHS, st.integers(min_value=1, max_value=200))
def test_it_agrees_with_joining_the_hot_times(
    steps: list[tuple[Fraction, Fraction]], hot: Fraction, tenths: int
) -> None:
    at, run, needed = Fraction(0), [], Fraction(tenths, 10)
    for gap, warm in steps:
        at += gap
        run.append((at, warm))
    times = hot_times(run, hot)
    lengths = [end - start for start, end in times]
    found = judged(*run, needed=needed, hot=hot)
    assert found.held == any(each >= needed for each in lengths)
    assert (found.reached_at is None) == (not times)
    assert Fraction(found.held_minutes) <= max(lengths, default=Fraction(0))
    assert found.held_minutes == pytest.approx(float(max(lengths, default=0)))
    if times:
        assert found.reached_at == float(times[0][0])
        ends_hot = run[-1][1] >= hot and len(times) == 1
        broke = lengths[0] < needed and not ends_hot
        assert found.broken_at == (float(times[0][1]) if broke else None)


@given(RUNS, st.integers(min_value=1, max_value=200), st.integers(min_value=1, max_value=50))
def test_more_asked_is_never_sooner_held(
    steps: list[tuple[Fraction, Fraction]], tenths: int, more: int
) -> None:
    at, run = Fraction(0), []
    for gap, warm in steps:
        at += gap
        run.append((at, warm))
    needed, extra = Fraction(tenths, 10), Fraction(more, 10)
    if not judged(*run, needed=needed, hot=120).held:
        assert not judged(*run, needed=needed + extra, hot=120).held
        assert not judged(*run, needed=needed, hot=120 + extra).held


@pytest.mark.parametrize("number", [float("nan"), float("inf"), True, "121", None, 250, -41])
def test_a_temperature_that_is_none_is_an_error(number: Any) -> None:
    with pytest.raises(ValueError, match="needed_celsius must be -40 to 200"):
        judged((0, 121), (30, 121), hot=number)


@pytest.mark.parametrize("number", [0, -1, float("nan"), float("inf"), True, "30", None])
def test_a_time_that_is_none_is_an_error(number: Any) -> None:
    with pytest.raises(ValueError, match="needed_minutes must be above 0"):
        judged((0, 121), (30, 121), needed=number)


@pytest.mark.parametrize(
    ("minutes", "celsius", "said"),
    [
        ([0], [121], "at least 2"),
        ([0, 1], [121], "as many"),
        ([0, 0], [121, 121], "must ascend"),
        ([1, 0], [121, 121], "must ascend"),
        ([0, float("nan")], [121, 121], "minutes must be"),
        ([0, 1], [121, float("nan")], "celsius must be"),
    ],
)
def test_a_record_that_is_none_is_an_error(minutes: Any, celsius: Any, said: str) -> None:
    with pytest.raises(ValueError, match=said):
        judge_cycle(minutes, celsius, 121, 30)
