"""Lethal rates and F0, against computed rows and against quadrature."""

from __future__ import annotations

from itertools import pairwise
from math import log
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from basinside.science.lethality import lethal_rate
from basinside.science.steam import f0_minutes, temperature_at_gauge

# Domain facts, section 3.4, "C": °C, then 10^((T - reference) / 10) for 121.1, 121.11, 121.0 °C.
REFERENCES = (121.1, 121.11, 121.0)
LETHAL_RATES = (
    (90, "0.0008", "0.0008", "0.0008"),
    (95, "0.0025", "0.0024", "0.0025"),
    (100, "0.0078", "0.0077", "0.0079"),
    (105, "0.0245", "0.0245", "0.0251"),
    (110, "0.0776", "0.0774", "0.0794"),
    (111, "0.0977", "0.0975", "0.1000"),
    (115, "0.2455", "0.2449", "0.2512"),
    (118, "0.4898", "0.4887", "0.5012"),
    (119, "0.6166", "0.6152", "0.6310"),
    (120, "0.7762", "0.7745", "0.7943"),
    (121, "0.9772", "0.9750", "1.0000"),
    (121.1, "1.0000", "0.9977", "1.0233"),
    (122, "1.2303", "1.2274", "1.2589"),
    (124, "1.9498", "1.9454", "1.9953"),
    (126, "3.0903", "3.0832", "3.1623"),
    (130, "7.7625", "7.7446", "7.9433"),
    (132, "12.3027", "12.2744", "12.5893"),
    (134, "19.4984", "19.4536", "19.9526"),
    (135, "24.5471", "24.4906", "25.1189"),
)
# The same, "C": °C, minutes held, F0 for 121.1 and for 121.0 °C.
HELD = (
    (121, 15, "14.66", "15.00"),
    (121, 20, "19.54", "20.00"),
    (121, 30, "29.32", "30.00"),
    (115, 30, "7.36", "7.54"),
    (126, 10, "30.90", "31.62"),
    (132, 4, "49.21", "50.36"),
    (132, 15, "184.54", "188.84"),
    (134, 3, "58.50", "59.86"),
    (134, 3.5, "68.24", "69.83"),  # 68.245; the facts say 68.25, which is 19.50 x 3.5
    (134, 18, "350.97", "359.15"),
    (135, 3, "73.64", "75.36"),
    (100, 20, "0.155", "0.159"),  # why boiling is no sterilization
)
# The same, "C": traces A and B.
TRACE_A = (
    (0, 20), (2, 60), (4, 90), (6, 105), (8, 115), (9, 119), (10, 121), (15, 121.3), (20, 121.4),
    (25, 121.2), (30, 121.1), (31, 118), (33, 108), (35, 95), (40, 70),
)  # fmt: skip
WARMTH_B = (100, 105, 110, 115, 118, 120, *[121] * 16, 119, 115, 110, 105, 100)
TRACE_B = tuple(enumerate(WARMTH_B))
Trace = tuple[tuple[float, float], ...]


def f0(trace: Trace, **how: float) -> float:
    minutes, celsius = zip(*trace, strict=True)
    return f0_minutes(minutes, celsius, **how)


def trapezoid(trace: Trace, reference: float = 121.1, above: float = -273.15) -> float:
    rates = [(at, lethal_rate(warm, reference) if warm >= above else 0) for at, warm in trace]
    return sum((t2 - t1) * (r1 + r2) / 2 for (t1, r1), (t2, r2) in pairwise(rates))


def decimals(like: str) -> int:
    return len(like.partition(".")[2])


@pytest.mark.parametrize("row", LETHAL_RATES)
def test_lethal_rate_is_the_tabled_one(row: tuple[Any, ...]) -> None:
    celsius, *rates = row
    for reference, rate in zip(REFERENCES, rates, strict=True):
        assert f"{lethal_rate(celsius, reference):.4f}" == rate


def test_120_degrees_is_the_published_rate() -> None:
    assert f"{lethal_rate(120):.3f}" == "0.776"  # F-06, "C"


@pytest.mark.parametrize(("celsius", "minutes", "usual", "whole"), HELD)
def test_a_steady_heat_is_the_tabled_f0(
    celsius: float, minutes: float, usual: str, whole: str
) -> None:
    for reference, wanted in ((121.1, usual), (121.0, whole)):
        found = f0_minutes([0, minutes], [celsius, celsius], reference)
        assert f"{found:.{decimals(wanted)}f}" == wanted


def test_fifteen_pounds_on_a_mountain_is_the_tabled_f0() -> None:
    # Section 3.4, "C": 15 psi gauge at 1,524 m is 118.22 °C; 20 min are 10.31, 30 min 15.46.
    celsius = temperature_at_gauge(15 * 6.894757, 1524)
    assert f"{celsius:.2f}" == "118.22"
    assert f"{f0_minutes([0, 20], [celsius, celsius]):.2f}" == "10.31"
    assert f"{f0_minutes([0, 30], [celsius, celsius]):.2f}" == "15.46"


def test_trace_a_is_the_exact_value_and_not_the_trapezoid() -> None:
    assert f"{f0(TRACE_A):.4f}" == "23.1722"
    # These say that it is the trace of the table.
    assert f"{trapezoid(TRACE_A):.4f}" == "23.5181"
    assert f"{trapezoid(TRACE_A, 121.0):.4f}" == "24.0659"
    assert f"{trapezoid(TRACE_A, above=100):.4f}" == "23.5079"
    assert f"{trapezoid(TRACE_A, above=110):.4f}" == "23.3609"
    pairs = list(pairwise(TRACE_A))
    left = sum((t2 - t1) * lethal_rate(c1) for (t1, c1), (t2, _) in pairs)
    right = sum((t2 - t1) * lethal_rate(c2) for (t1, _), (t2, c2) in pairs)
    assert (f"{left:.4f}", f"{right:.4f}") == ("23.5984", "23.4378")


def test_trace_b_is_the_exact_value_and_not_the_trapezoid() -> None:
    assert len(TRACE_B) == 27
    assert f"{f0(TRACE_B):.4f}" == "18.1062"
    assert f"{trapezoid(TRACE_B):.4f}" == "18.2215"
    assert f"{trapezoid(TRACE_B, 121.0):.4f}" == "18.6459"
    assert f"{sum(lethal_rate(warm) for warm in WARMTH_B):.4f}" == "18.2292"


CELSIUS = st.floats(min_value=20, max_value=140)
STEPS = st.lists(
    st.tuples(st.floats(min_value=0.01, max_value=20), CELSIUS), min_size=2, max_size=12
)
BRIEF = st.lists(st.tuples(st.floats(min_value=0.1, max_value=20), CELSIUS), min_size=2, max_size=4)


def timed(steps: list[tuple[float, float]]) -> Trace:
    at, trace = 0.0, []
    for lasting, warm in steps:
        at += lasting
        trace.append((at, warm))
    return tuple(trace)


def simpson(trace: Trace, pieces: int = 400) -> float:
    """Integrate the rate numerically along the straight lines."""
    total = 0.0
    for (t1, c1), (t2, c2) in pairwise(trace):
        rates = [10 ** ((c1 + (c2 - c1) * k / pieces - 121.1) / 10) for k in range(pieces + 1)]
        odd, even = sum(rates[1:-1:2]), sum(rates[2:-1:2])
        total += (t2 - t1) / pieces / 3 * (rates[0] + 4 * odd + 2 * even + rates[-1])
    return total


@given(BRIEF)
def test_f0_is_what_quadrature_finds(steps: list[tuple[float, float]]) -> None:
    trace = timed(steps)
    assert f0(trace) == pytest.approx(simpson(trace), rel=1e-5)


@given(STEPS, st.integers(min_value=1, max_value=10))
def test_f0_adds_up_over_a_split(steps: list[tuple[float, float]], at: int) -> None:
    trace = timed(steps)
    at = min(at, len(trace) - 1)
    parts = [part for part in (trace[: at + 1], trace[at:]) if len(part) > 1]
    assert f0(trace) == pytest.approx(sum(map(f0, parts)), rel=1e-12)


@given(CELSIUS, CELSIUS, st.floats(min_value=0.1, max_value=100), st.integers(1, 99))
def test_a_reading_on_the_line_changes_nothing(
    first: float, last: float, lasting: float, percent: int
) -> None:
    share = percent / 100
    between = (lasting * share, first + (last - first) * share)
    trace = ((0.0, first), (lasting, last))
    assert f0((trace[0], between, trace[1])) == pytest.approx(f0(trace), rel=1e-9)


@given(STEPS, st.integers(min_value=0), st.floats(min_value=0.1, max_value=20))
def test_hotter_is_never_less(steps: list[tuple[float, float]], at: int, more: float) -> None:
    trace = timed(steps)
    hotter = [*trace]
    at %= len(trace)
    hotter[at] = (trace[at][0], trace[at][1] + more)
    assert f0(tuple(hotter)) > f0(trace)


@given(STEPS)
def test_f0_lies_between_the_coolest_and_the_hottest(steps: list[tuple[float, float]]) -> None:
    trace = timed(steps)
    lasting, warmth = trace[-1][0] - trace[0][0], [warm for _, warm in trace]
    assert f0(trace) >= lasting * lethal_rate(min(warmth)) * (1 - 1e-9)
    assert f0(trace) <= lasting * lethal_rate(max(warmth)) * (1 + 1e-9)


@given(STEPS, st.floats(min_value=-1000, max_value=1000))
def test_when_the_record_begins_does_not_matter(
    steps: list[tuple[float, float]], begins: float
) -> None:
    trace = timed(steps)
    later = tuple((at + begins, warm) for at, warm in trace)
    assert f0(later) == pytest.approx(f0(trace), rel=1e-9)


@pytest.mark.parametrize("rise", [1e-13, 1e-10, 1e-7, 1e-4, 0.01])
def test_a_line_that_hardly_rises_keeps_its_difference(rise: float) -> None:
    steady = f0_minutes([0, 30], [121.1, 121.1])
    gained = f0_minutes([0, 30], [121.1, 121.1 + rise]) - steady
    # Half the rise on average, by the first term of the series; the second is a hundredth of it.
    assert steady == 30
    assert gained == pytest.approx(30 * log(10) / 10 * rise / 2, rel=0.002, abs=1e-14)


@given(st.floats(min_value=5, max_value=20), st.floats(min_value=115, max_value=125))
def test_ten_times_as_fast_for_each_z(z: float, reference: float) -> None:
    assert lethal_rate(reference, reference, z) == 1
    assert lethal_rate(reference - z, reference, z) == pytest.approx(0.1)
    held = f0_minutes([0, 7], [reference, reference], reference_celsius=reference, z=z)
    assert held == pytest.approx(7)


@pytest.mark.parametrize(
    ("minutes", "celsius", "said"),
    [
        ([], [], "at least 2"),
        ([0], [121], "at least 2"),
        ([0, 1], [121], "as many"),
        ([0, 1, 2], [121, 121], "as many"),
        ([0, 0], [121, 121], "must ascend"),
        ([0, 5, 4], [121, 121, 121], "must ascend"),
        ([0, float("nan")], [121, 121], "minutes must be"),
        ([0, float("inf")], [121, 121], "minutes must be"),
        ([False, True], [121, 121], "minutes must be"),
        ([0, "1"], [121, 121], "minutes must be"),
        ([0, 1], [121, float("nan")], "celsius must be -40 to 200"),
        ([0, 1], [121, float("inf")], "celsius must be -40 to 200"),
        ([0, 1], [121, 250], "celsius must be -40 to 200"),  # written in °F
        ([0, 1], [121, None], "celsius must be -40 to 200"),
        ([0, 1], [121, True], "celsius must be -40 to 200"),
    ],
)
def test_a_record_that_is_none_is_an_error(minutes: Any, celsius: Any, said: str) -> None:
    with pytest.raises(ValueError, match=said):
        f0_minutes(minutes, celsius)


@pytest.mark.parametrize("number", [0, -10, 0.9, 101, float("nan"), float("inf"), True, "10", None])
def test_a_z_that_is_none_is_an_error(number: Any) -> None:
    with pytest.raises(ValueError, match="z must be 1 to 100"):
        f0_minutes([0, 1], [121, 121], 121.1, number)
    with pytest.raises(ValueError, match="z must be 1 to 100"):
        lethal_rate(121, 121, number)


@pytest.mark.parametrize("number", [-41, 250, float("nan"), float("inf"), True, "121", None])
def test_a_temperature_that_is_none_is_an_error(number: Any) -> None:
    with pytest.raises(ValueError, match="reference_celsius must be -40 to 200"):
        f0_minutes([0, 1], [121, 121], number)
    with pytest.raises(ValueError, match=r"^celsius must be -40 to 200"):
        lethal_rate(number)
