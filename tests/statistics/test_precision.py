"""Bounds and errors, against published values and another program."""

import doctest
import importlib
import pkgutil

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import betabinom, binomtest, f

from basinside import statistics as room
from basinside.science import variance_ratio
from basinside.statistics.consistency import decision_consistency
from basinside.statistics.feldt import feldt_interval
from basinside.statistics.kuder_richardson import kr20
from basinside.statistics.lengthening import spearman_brown, times_as_long
from basinside.statistics.mcnemar import mcnemar
from basinside.statistics.measurement_error import error_at, standard_error
from basinside.statistics.wilson import wilson_interval
from tests.statistics.published import LAW_SCHOOL_MARKS, TEN_MARKS


@pytest.mark.parametrize(
    ("reliability", "items", "people", "confidence", "bounds", "within"),
    [
        (kr20(LAW_SCHOOL_MARKS), 5, 1000, 0.95, (0.223474, 0.361803), 1e-6),  # C05
        (0.79, 26, 41, 0.90, (0.704676, 0.861614), 1e-6),  # C06: Feldt and others, 1987
        (kr20(TEN_MARKS), 10, 10, 0.95, (0.3091, 0.9112), 5e-5),
        (0.85, 7, 89, 0.95, (0.79706, 0.89317), 1e-5),  # R statpsych, without its correction
    ],
)
def test_bounds_of_reliability(
    reliability: float,
    items: int,
    people: int,
    confidence: float,
    bounds: tuple[float, float],
    within: float,
) -> None:
    found = feldt_interval(reliability, items, people, confidence)
    assert found == pytest.approx(bounds, abs=within)


DEGREES = st.integers(1, 4000)


@given(st.floats(1e-4, 0.9999), DEGREES, DEGREES)
def test_ratios_of_variances_are_those_of_another_program(
    probability: float, over: int, under: int
) -> None:
    theirs = float(f.ppf(probability, over, under))
    assert variance_ratio.value_below(probability, over, under) == pytest.approx(theirs, rel=1e-8)
    assert variance_ratio.at_most(theirs, over, under) == pytest.approx(probability, abs=1e-10)


@given(st.floats(0.01, 0.99), DEGREES, DEGREES)
def test_a_ratio_upside_down(probability: float, over: int, under: int) -> None:
    one = variance_ratio.value_below(probability, over, under)
    other = variance_ratio.value_below(1 - probability, under, over)
    assert one * other == pytest.approx(1, rel=1e-7)


def test_no_ratio_is_below_nothing() -> None:
    assert variance_ratio.at_most(0, 3, 4) == 0.0
    with pytest.raises(ValueError, match="probability of 0 to 1"):
        variance_ratio.value_below(1, 3, 4)
    with pytest.raises(ValueError, match="two items"):
        feldt_interval(0.5, 1, 10)


def test_a_longer_test() -> None:
    # C08, and the doubled tests of Bock and Lieberman's items as R psychometric gives it.
    assert spearman_brown(0.60, 2) == 0.75
    assert times_as_long(0.60, 0.80) == pytest.approx(2.666667, abs=1e-6)
    ours = kr20(LAW_SCHOOL_MARKS)
    assert ours is not None
    assert spearman_brown(ours, 2) == pytest.approx(0.4556, abs=5e-5)
    assert 5 * times_as_long(ours, 0.80) == pytest.approx(47.8, abs=0.05)
    for reliability, times in ((0.5, 0), (-1, 2), (-0.9, 3)):
        with pytest.raises(ValueError, match=r"long|length"):
            spearman_brown(reliability, times)
    with pytest.raises(ValueError, match="between 0 and 1"):
        times_as_long(0, 0.8)


@given(st.integers(1, 98), st.integers(1, 98))
def test_length_there_and_back(own: int, wanted: int) -> None:
    times = times_as_long(own / 100, wanted / 100)
    assert spearman_brown(own / 100, times) == pytest.approx(wanted / 100)


def test_errors_of_measurement() -> None:
    # C09; the law school items with the variance of people less one, as R psych gives it.
    assert standard_error(10, 0.84) == pytest.approx(4.0, abs=1e-9)
    assert error_at(16, 20) == pytest.approx(1.835326, abs=1e-6)
    spread = float(np.array(LAW_SCHOOL_MARKS).sum(axis=1).std(ddof=1))
    assert standard_error(spread, kr20(LAW_SCHOOL_MARKS) or 0) == pytest.approx(0.8691, abs=5e-5)
    assert error_at(0, 20) == error_at(20, 20) == 0.0
    for right, items in ((21, 20), (-1, 20), (1, 1)):
        with pytest.raises(ValueError, match="nobody has"):
            error_at(right, items)
    with pytest.raises(ValueError, match="spread"):
        standard_error(-1, 0.5)


def test_would_they_pass_again() -> None:
    # C24: Huynh 1976, ten items, mean 8, variance 3, cut 8.
    found = decision_consistency(10, 8, 3, 8)
    assert found is not None
    assert found == pytest.approx((0.720847, 0.371409), abs=1e-6)


@given(st.integers(2, 25), st.data())
def test_agreement_is_summed_as_another_program_would(items: int, data: st.DataObject) -> None:
    mean = data.draw(st.integers(1, items - 1))
    cut = data.draw(st.integers(1, items))
    low = mean * (items - mean) / items
    variance = data.draw(st.floats(low * 1.05, low * items * 0.95))
    found = decision_consistency(items, mean, variance, cut)
    assert found is not None
    trust = items / (items - 1) * (1 - low / variance)
    alpha = (1 / trust - 1) * mean
    beta = items / trust - items - alpha
    fail = float(betabinom.cdf(cut - 1, items, alpha, beta))
    # Both forms failed: given the first score x, the second is beta-binomial of what x adds.
    both = sum(
        float(betabinom.pmf(x, items, alpha, beta))
        * float(betabinom.cdf(cut - 1, items, alpha + x, beta + items - x))
        for x in range(cut)
    )
    assert found.agreement == pytest.approx(1 + 2 * (both - fail), abs=1e-7)
    assert 0 <= found.agreement <= 1
    assert found.kappa is not None
    assert found.kappa * (fail - fail**2) == pytest.approx(both - fail**2, abs=1e-7)


def test_scores_that_say_nothing_about_another_sitting() -> None:
    assert decision_consistency(10, 8, 1, 8) is None  # they differ less than by chance
    assert decision_consistency(10, 8, 0, 8) is None
    assert decision_consistency(10, 10, 3, 8) is None
    everybody = decision_consistency(10, 8, 3, 0)
    assert everybody is not None
    assert (everybody.agreement, everybody.kappa) == (1.0, None)


@pytest.mark.parametrize(
    ("hits", "people", "bounds"),
    # C35: Newcombe 1998, table I; nobody of twenty and all of ten; then our own.
    [
        (81, 263, (0.2553, 0.3662)),
        (0, 20, (0, 0.1611)),
        (10, 10, (0.7225, 1)),
        (5, 5, (0.5655, 1)),
        (9, 10, (0.5958, 0.9821)),
        (18, 20, (0.6990, 0.9721)),
        (45, 50, (0.7864, 0.9565)),
    ],
)
def test_bounds_of_a_share(hits: int, people: int, bounds: tuple[float, float]) -> None:
    assert wilson_interval(hits, people) == pytest.approx(bounds, abs=5e-5)


@given(st.integers(1, 500), st.data())
def test_bounds_are_those_of_another_program(people: int, data: st.DataObject) -> None:
    hits = data.draw(st.integers(0, people))
    theirs = binomtest(hits, people).proportion_ci(0.95, method="wilson")
    assert wilson_interval(hits, people) == pytest.approx((theirs.low, theirs.high), abs=1e-9)


@pytest.mark.parametrize(("hits", "people"), [(1, 0), (5, 4), (-1, 4)])
def test_what_is_no_share(hits: int, people: int) -> None:
    with pytest.raises(ValueError, match="no share"):
        wilson_interval(hits, people)


@pytest.mark.parametrize(
    ("one_way", "other_way", "expected"),
    # C36; the second: Agresti's table of approval. Then a small clinic where nobody got worse.
    [(2, 11, 0.0224609), (150, 86, 3.716e-5), (0, 5, 0.0625), (0, 6, 0.03125), (3, 3, 1.0)],
)
def test_who_changed(one_way: int, other_way: int, expected: float) -> None:
    assert mcnemar(one_way, other_way) == pytest.approx(expected, rel=1e-4)
    assert mcnemar(other_way, one_way) == mcnemar(one_way, other_way)


@given(st.integers(0, 300), st.integers(0, 300))
def test_changes_are_those_of_another_program(one_way: int, other_way: int) -> None:
    if one_way + other_way:
        theirs = binomtest(one_way, one_way + other_way).pvalue
        assert mcnemar(one_way, other_way) == pytest.approx(float(theirs), rel=1e-9)
    else:
        assert mcnemar(0, 0) == 1.0


def test_nobody_is_fewer_than_none() -> None:
    with pytest.raises(ValueError, match="fewer than none"):
        mcnemar(-1, 2)


def test_the_examples_run() -> None:
    names = [each.name for each in pkgutil.iter_modules(room.__path__)]
    assert len(names) > 10
    for module in (
        variance_ratio,
        *(importlib.import_module(f"{room.__name__}.{name}") for name in names),
    ):
        assert doctest.testmod(module).failed == 0
