"""The arithmetic of D and SAL against computed rows and its own identities."""

from __future__ import annotations

from collections.abc import Callable
from math import log10
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from basinside.science.lethality import minutes_for_sal, survivors

# Domain facts, section 3.4, "C": D, log10 of N0, log10 of SAL, minutes.
SAL = (
    (1.5, 6, -6, 18.0),
    (2.0, 6, -6, 24.0),
    (1.0, 6, -6, 12.0),  # F-12, "V": 12 D reach 10^-6 from 10^6
    (2.5, 6, -6, 30.0),
    (1.5, 4, -6, 15.0),
    (1.0, 3, -6, 9.0),
    (1.5, 2, -6, 12.0),
    (2.0, 5, -6, 22.0),
)
# The same, "C": N0, D, F, survivors and the figures printed.
LEFT = (
    (1e6, 1.5, 8, 4.64, 3),
    (1e6, 1.5, 12, 1.0e-2, 2),
    (1e6, 1.5, 15, 1.0e-4, 2),
    (1e6, 1.5, 18, 1.0e-6, 2),
    (1e6, 1.5, 20, 4.64e-8, 3),
    (1e6, 2, 15, 3.16e-2, 3),
    (1e6, 2, 30, 1e-9, 1),
    (1e2, 1, 8, 1e-6, 1),
)


@pytest.mark.parametrize(("d", "start", "sal", "minutes"), SAL)
def test_minutes_for_sal_are_the_tabled_ones(
    d: float, start: int, sal: int, minutes: float
) -> None:
    assert minutes_for_sal(d, start, sal) == minutes
    assert survivors(10**start, d, minutes) == pytest.approx(10**sal)


@pytest.mark.parametrize(("start", "d", "f", "left", "figures"), LEFT)
def test_survivors_are_the_tabled_ones(
    start: float, d: float, f: float, left: float, figures: int
) -> None:
    assert f"{survivors(start, d, f):.{figures - 1}e}" == f"{left:.{figures - 1}e}"


def test_eight_minutes_are_the_tabled_reduction() -> None:
    assert f"{log10(1e6 / survivors(1e6, 1.5, 8)):.2f}" == "5.33"


def test_fifteen_minutes_reach_one_in_a_million_only_from_fewer_spores() -> None:
    assert survivors(1e6, 1.5, 15) > 1e-6 * 1.01
    assert survivors(1e4, 1.5, 15) == pytest.approx(1e-6)


@given(st.floats(min_value=1.5, max_value=3.0))
def test_twice_the_half_cycle_is_one_in_a_million(d: float) -> None:
    # F-08 and F-11, "V": test spores have a D of 1.5 to 3.0 min; half a cycle kills a million.
    half = minutes_for_sal(d, 6, 0)
    assert minutes_for_sal(d, 6, -6) == pytest.approx(2 * half)
    assert survivors(1e6, d, half) == pytest.approx(1)


@pytest.mark.parametrize("number", [float("nan"), float("inf"), -float("inf"), True, "6", None])
def test_d_and_sal_of_no_number_are_errors(number: Any) -> None:
    asked: tuple[tuple[str, Callable[[], float]], ...] = (
        ("d_minutes", lambda: minutes_for_sal(number, 6, -6)),
        ("log10_start", lambda: minutes_for_sal(1.5, number, -6)),
        ("log10_sal", lambda: minutes_for_sal(1.5, 6, number)),
        ("start", lambda: survivors(number, 1.5, 8)),
        ("d_minutes", lambda: survivors(1e6, number, 8)),
        ("f_minutes", lambda: survivors(1e6, 1.5, number)),
    )
    for name, ask in asked:
        with pytest.raises(ValueError, match=f"^{name} must be"):
            ask()


def test_d_and_sal_outside_their_range_are_errors() -> None:
    asked: tuple[Callable[[], float], ...] = (
        lambda: minutes_for_sal(0, 6, -6),
        lambda: minutes_for_sal(-1, 6, -6),
        lambda: minutes_for_sal(1.5, -7, -6),  # already fewer than wanted
        lambda: survivors(0, 1.5, 8),
        lambda: survivors(1e6, 0, 8),
        lambda: survivors(1e6, 1.5, -1),
        lambda: survivors(1e31, 1.5, 8),
    )
    for ask in asked:
        with pytest.raises(ValueError, match="must"):
            ask()


@given(
    st.floats(min_value=0.1, max_value=10),
    st.floats(min_value=0, max_value=9),
    st.floats(min_value=-9, max_value=0),
)
def test_that_many_minutes_leave_that_many(d: float, start: float, sal: float) -> None:
    minutes = minutes_for_sal(d, start, sal)
    assert survivors(10**start, d, minutes) == pytest.approx(10**sal, rel=1e-9)
