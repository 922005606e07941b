"""What a length and a cut mean, against printed tables, another program and identities."""

from fractions import Fraction
from math import prod

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import binom

from basinside.derive.forms import quotas
from basinside.score.cut import items_needed
from basinside.statistics.mastery import (
    over_attempts,
    pass_probability,
    smallest_test,
    zero_failure_run,
)

# The idea of the table: Millman, Review of Educational Research 43 (1973) 205. Rows: items, cut,
# then the probability of passing for .50 .60 .70 .75 .80 .85 .90 .95 (assessment science, 3.1).
MASTERED = (0.50, 0.60, 0.70, 0.75, 0.80, 0.85, 0.90, 0.95)
TABLE = """
 5  4 .1875 .3370 .5282 .6328 .7373 .8352 .9185 .9774
 5  5 .0313 .0778 .1681 .2373 .3277 .4437 .5905 .7738
 8  7 .0352 .1064 .2553 .3671 .5033 .6572 .8131 .9428
10  8 .0547 .1673 .3828 .5256 .6778 .8202 .9298 .9885
10  9 .0107 .0464 .1493 .2440 .3758 .5443 .7361 .9139
15 12 .0176 .0905 .2969 .4613 .6482 .8227 .9444 .9945
20 16 .0059 .0510 .2375 .4148 .6296 .8298 .9568 .9974
20 18 .0002 .0036 .0355 .0913 .2061 .4049 .6769 .9245
25 20 .0020 .0294 .1935 .3783 .6167 .8385 .9666 .9988
30 24 .0007 .0172 .1595 .3481 .6070 .8474 .9742 .9994
50 40 .0000 .0022 .0789 .2622 .5836 .8801 .9906 1.0000
"""
ROWS = [line.split() for line in TABLE.strip().splitlines()]


@pytest.mark.parametrize("row", ROWS, ids=[f"{row[0]}-{row[1]}" for row in ROWS])
def test_the_table_of_passing(row: list[str]) -> None:
    items, cut = int(row[0]), int(row[1])
    ours = [pass_probability(items, cut, each) for each in MASTERED]
    assert ours == pytest.approx([float(each) for each in row[2:]], abs=5.1e-5)


@pytest.mark.parametrize(
    ("items", "cut", "proportion", "expected"),
    [
        (10, 8, 0.7, 0.382783),  # C17
        (10, 8, 0.9, 0.929809),  # C18
        (20, 16, 0.7, 0.237508),  # C19
        (20, 16, 0.9, 0.956826),  # C20
        (10, 10, 0.98, 0.817073),  # C42: ten critical steps, each done right 98 times of 100
        (10, 10, 0.95, 0.5987),
        (20, 20, 0.99, 0.8179),
        (10, 8, 0.25, 0.000416),  # blind guessing among four options, three, and true or false
        (10, 8, Fraction(1, 3), 0.003404),
        (10, 8, 0.5, 0.0547),
        (3, 3, 0.70, 0.343),  # three observed runs of three
    ],
)
def test_worked_chances(
    items: int, cut: int, proportion: float | Fraction, expected: float
) -> None:
    assert pass_probability(items, cut, proportion) == pytest.approx(expected, abs=5.1e-5)


def test_a_chance_is_exact_to_its_last_figure() -> None:
    assert pass_probability(10, 10, 0.7) == float(Fraction(7, 10) ** 10)
    assert pass_probability(1, 1, "0.1") == 0.1
    assert pass_probability(400, 1, 0.5) == 1.0


LENGTHS = st.integers(0, 120)
SHARES = st.integers(0, 100).map(lambda percent: Fraction(percent, 100))


@given(LENGTHS, st.data(), SHARES)
def test_a_chance_is_that_of_another_program(
    items: int, data: st.DataObject, proportion: Fraction
) -> None:
    cut = data.draw(st.integers(0, items + 1))
    theirs = binom.sf(cut - 1, items, float(proportion))
    assert pass_probability(items, cut, proportion) == pytest.approx(float(theirs), abs=1e-10)


@given(st.integers(0, 60), SHARES)
def test_all_scores_together_are_one(items: int, proportion: Fraction) -> None:
    chances = [pass_probability(items, cut, proportion) for cut in range(items + 2)]
    assert (chances[0], chances[-1]) == (1.0, 0.0)
    assert chances == sorted(chances, reverse=True)


@given(st.integers(1, 60), st.data())
def test_who_knows_more_passes_no_less(items: int, data: st.DataObject) -> None:
    cut = data.draw(st.integers(0, items))
    chances = [pass_probability(items, cut, Fraction(percent, 100)) for percent in range(0, 101, 5)]
    assert chances == sorted(chances)


@pytest.mark.parametrize(("items", "proportion"), [(-1, 0.5), (5, 1.1), (5, -0.1)])
def test_what_is_no_test(items: int, proportion: float) -> None:
    with pytest.raises(ValueError, match=r"has no|share"):
        pass_probability(items, 3, proportion)


def test_what_attempts_do() -> None:
    once = pass_probability(10, 8, 0.70)
    tries = [round(over_attempts(once, n), 4) for n in (1, 2, 3)]
    assert tries == [0.3828, 0.6190, 0.7649]
    assert over_attempts(once, 3) == pytest.approx(0.764867, abs=1e-6)  # C22
    assert over_attempts(pass_probability(20, 16, 0.7), 3) == pytest.approx(0.5567, abs=5e-5)
    assert over_attempts(once, 0) == 0.0
    with pytest.raises(ValueError, match="attempts"):
        over_attempts(once, -1)


@given(SHARES, st.integers(0, 8))
def test_another_attempt_never_makes_it_harder(chance: Fraction, attempts: int) -> None:
    now, then = over_attempts(chance, attempts), over_attempts(chance, attempts + 1)
    assert now <= then <= 1
    assert now == pytest.approx(1 - prod(float(1 - chance) for _ in range(attempts)))


@pytest.mark.parametrize(
    ("limits", "length", "attained"),
    # Assessment science, 3.1; the first and the third are C21.
    [
        ((0.60, 0.90, 0.10, 0.10), (15, 12), (0.0905, 0.0556)),
        ((0.60, 0.90, 0.05, 0.05), (24, 19), (0.0400, 0.0277)),
        ((0.70, 0.90, 0.10, 0.10), (25, 21), (0.0905, 0.0980)),
        ((0.70, 0.90, 0.05, 0.05), (41, 34), (0.0458, 0.0477)),
        ((0.70, 0.95, 0.10, 0.10), (16, 14), (0.0994, 0.0429)),
        ((0.80, 0.95, 0.10, 0.10), (32, 29), (0.0931, 0.0738)),
        ((0.80, 0.90, 0.10, 0.10), (86, 74), (0.0990, 0.0858)),
    ],
)
def test_the_smallest_tests(
    limits: tuple[float, float, float, float],
    length: tuple[int, int],
    attained: tuple[float, float],
) -> None:
    found = smallest_test(*limits)
    assert found == length
    passes = pass_probability(found.items, found.cut, limits[0])
    fails = 1 - pass_probability(found.items, found.cut, limits[1])
    assert (passes, fails) == pytest.approx(attained, abs=5.1e-5)


PERCENTS = st.integers(20, 80)


@given(PERCENTS, st.integers(15, 20), st.integers(3, 30), st.integers(3, 30))
def test_no_smaller_test_would_do(low: int, apart: int, first: int, second: int) -> None:
    given_ = [Fraction(each, 100) for each in (low, low + apart, first, second)]
    found = smallest_test(given_[0], given_[1], given_[2], given_[3])
    non_master, master, false_pass, false_fail = map(float, given_)

    def holds(items: int, cut: int) -> bool:
        slack = 1e-12
        return bool(
            binom.sf(cut - 1, items, non_master) <= false_pass + slack
            and binom.cdf(cut - 1, items, master) <= false_fail + slack
        )

    assert holds(*found)
    below = found.items - 1
    assert not any(holds(below, cut) for cut in range(1, below + 1))
    assert binom.sf(found.cut - 2, found.items, non_master) > false_pass - 1e-12 or found.cut == 1


def test_what_no_test_can_tell_apart() -> None:
    with pytest.raises(ValueError, match="has to master more"):
        smallest_test(0.9, 0.9, 0.1, 0.1)
    with pytest.raises(ValueError, match="no test of at most 50 items"):
        smallest_test(0.80, 0.90, 0.10, 0.10, most=50)
    with pytest.raises(ValueError, match="no test of at most 30 items"):
        smallest_test(0.80, 0.90, 0, 1, most=30)


@pytest.mark.parametrize(
    ("proportion", "run"),
    # C23 is the second; assessment science, 3.1.
    [(0.80, 14), (0.90, 29), (0.95, 59), (0.99, 299)],
)
def test_runs_without_a_failure(proportion: float, run: int) -> None:
    assert zero_failure_run(proportion, 0.95) == run


@given(st.integers(1, 99), st.integers(0, 99))
def test_a_run_shows_it_and_none_shorter_does(percent: int, confidence: int) -> None:
    each, doubt = Fraction(percent, 100), 1 - Fraction(confidence, 100)
    run = zero_failure_run(each, Fraction(confidence, 100))
    assert each**run <= doubt
    assert run == 0 or each ** (run - 1) > doubt


@pytest.mark.parametrize(("proportion", "confidence"), [(1, 0.95), (0, 0.95), (0.9, 1)])
def test_what_no_run_shows(proportion: float, confidence: float) -> None:
    with pytest.raises(ValueError, match="for certain"):
        zero_failure_run(proportion, confidence)


@pytest.mark.parametrize(
    ("percent", "items", "needed"),
    # C10: where fractions of a computer give 15, 29, 8.
    [(56, 25, 14), (56, 50, 28), (7, 100, 7), (80, 15, 12), (14, 50, 7), (100, 9, 9), (0, 9, 0)],
)
def test_a_cut_in_whole_items(percent: int, items: int, needed: int) -> None:
    assert items_needed(percent, items) == needed


@given(st.integers(0, 100), st.integers(0, 500))
def test_a_cut_is_the_least_number_that_reaches_it(percent: int, items: int) -> None:
    needed = items_needed(percent, items)
    assert needed * 100 >= percent * items > (needed - 1) * 100


@given(st.lists(st.integers(0, 100), min_size=1, max_size=9), st.integers(0, 300))
def test_quotas_add_up_whatever_the_shares_do(shares: list[int], total: int) -> None:
    wanted = quotas(shares, total)
    whole = sum(shares)
    assert sum(wanted) == (total if whole else 0)
    for share, number in zip(shares, wanted, strict=True):
        assert not whole or abs(number - Fraction(share * total, whole)) < 1
    named = {str(n): share for n, share in enumerate(shares)}
    assert list(quotas(named, total).values()) == wanted


def test_worked_quotas_of_a_row() -> None:
    # Assessment science, section 11: a tie goes to the first.
    assert quotas([1, 1, 1], 20) == [7, 7, 6]
    assert quotas([40, 30, 20, 10], 25) == [10, 8, 5, 2]
