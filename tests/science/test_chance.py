"""Binomial and chi-square tails against worked numbers, exact sums and closed forms."""

import doctest
from fractions import Fraction
from math import comb, erfc, exp, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from basinside.science import chance
from basinside.science.chance import at_least, chi_square, chi_square_at_least


def exact_tail(hits: int, tries: int, share: Fraction) -> Fraction:
    return sum(
        (comb(tries, k) * share**k * (1 - share) ** (tries - k) for k in range(hits, tries + 1)),
        Fraction(0),
    )


@pytest.mark.parametrize(
    ("hits", "tries", "share", "expected"),
    [
        # Of 20 items with four options the longest is right in 14.
        (14, 20, 0.25, 2.9512e-05),
        (8, 10, 0.7, 0.382783),
        (8, 10, 0.9, 0.929809),
        (16, 20, 0.7, 0.237508),
        (16, 20, 0.9, 0.956826),
        (0, 7, 0.2, 1.0),
    ],
)
def test_worked_binomial_tails(hits: int, tries: int, share: float, expected: float) -> None:
    assert at_least(hits, tries, share) == pytest.approx(expected, rel=1e-4)


@given(st.integers(1, 60), st.data())
def test_a_binomial_tail_is_its_exact_sum(tries: int, data: st.DataObject) -> None:
    hits = data.draw(st.integers(0, tries))
    share = Fraction(1, data.draw(st.integers(2, 6)))
    assert at_least(hits, tries, float(share)) == pytest.approx(
        float(exact_tail(hits, tries, share)), rel=1e-9
    )


def test_a_tail_of_ten_thousand_does_not_overflow() -> None:
    assert 0.4 < at_least(3_334, 10_000, 1 / 3) < 0.6
    assert at_least(5_000, 10_000, 1 / 3) < 1e-200


def test_worked_chi_square() -> None:
    # Right options in four places: 12, 3, 3 and 2 times.
    assert chi_square([12, 3, 3, 2]) == pytest.approx(13.2, abs=1e-9)
    assert chi_square_at_least(13.2, 3) == pytest.approx(0.004223, abs=1e-5)
    assert chi_square([5, 5, 5, 5]) == 0
    assert chi_square_at_least(0, 3) == 1


@pytest.mark.parametrize(
    ("value", "degrees"),
    # The 5 % and 1 % points that every table prints (Abramowitz and Stegun, table 26.8).
    [(3.84146, 1), (5.99146, 2), (7.81473, 3), (9.48773, 4)],
)
def test_the_five_per_cent_points_of_the_tables(value: float, degrees: int) -> None:
    assert chi_square_at_least(value, degrees) == pytest.approx(0.05, abs=1e-6)


@given(st.floats(0.001, 300))
def test_closed_forms(value: float) -> None:
    assert chi_square_at_least(value, 1) == pytest.approx(erfc(sqrt(value / 2)), rel=1e-8, abs=0)
    assert chi_square_at_least(value, 2) == pytest.approx(exp(-value / 2), rel=1e-8, abs=0)
    four = exp(-value / 2) * (1 + value / 2)
    assert chi_square_at_least(value, 4) == pytest.approx(four, rel=1e-8, abs=0)


def test_the_examples_of_the_pages() -> None:
    assert doctest.testmod(chance).failed == 0
