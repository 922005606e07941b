"""The cut that judges set, against worked numbers and identities."""

from collections.abc import Sequence
from math import sqrt
from statistics import mean, stdev

import pytest
from hypothesis import given
from hypothesis import strategies as st

from basinside.statistics import angoff as module
from basinside.statistics import mastery
from basinside.statistics.angoff import angoff, variances
from tests.statistics.published import FIVE_JUDGES


def test_five_judges_and_ten_items() -> None:
    # C11, and the two standard errors of a share in section 2 of assessment science, times ten.
    found = angoff(FIVE_JUDGES)
    assert found.cut == 7.55
    assert found.se_judges == pytest.approx(0.135093, abs=1e-6)
    assert found.se_items == pytest.approx(0.34319, abs=1e-5)
    parts = [float(each) for each in variances(FIVE_JUDGES)]
    assert parts == pytest.approx([0.00070833, 0.00995278, 0.00204167], abs=5e-9)


def test_it_is_found_beside_the_other_questions_of_mastery() -> None:
    assert mastery.angoff is module.angoff


@st.composite
def tables(draw: st.DrawFn) -> list[list[float]]:
    items = draw(st.integers(2, 12))
    row = st.lists(st.integers(0, 20).map(lambda n: n / 20), min_size=items, max_size=items)
    return draw(st.lists(row, min_size=2, max_size=8))


@given(tables())
def test_the_cut_is_the_mean_of_sums_and_items_add_doubt(ratings: list[list[float]]) -> None:
    found = angoff(ratings)
    sums = [sum(row) for row in ratings]
    assert found.cut == pytest.approx(mean(sums))
    assert found.se_judges == pytest.approx(stdev(sums) / sqrt(len(sums)), abs=1e-9)
    assert found.se_items >= found.se_judges


@given(tables())
def test_components_add_up_to_all_that_varies(ratings: list[list[float]]) -> None:
    parts = variances(ratings)
    judges, items = len(ratings), len(ratings[0])
    every = [each for row in ratings for each in row]
    middle = mean(every)
    squares = (
        (judges - 1) * (items * parts.judges + parts.residual)
        + (items - 1) * (judges * parts.items + parts.residual)
        + (judges - 1) * (items - 1) * parts.residual
    )
    assert float(squares) == pytest.approx(sum((each - middle) ** 2 for each in every), abs=1e-9)


def test_judges_who_agree_leave_no_doubt_but_of_the_items() -> None:
    alike = angoff([[0.5, 0.9]] * 4)
    assert (alike.cut, alike.se_judges) == (1.4, 0.0)
    assert alike.se_items == pytest.approx(sqrt(2) * 0.2 * sqrt(2))


@pytest.mark.parametrize(
    "ratings",
    [[], [[0.5, 0.6]], [[0.5], [0.6]], [[0.5, 0.6], [0.5]], [[0.5, 1.2], [0.5, 0.5]]],
)
def test_what_says_nothing(ratings: Sequence[Sequence[float]]) -> None:
    with pytest.raises(ValueError, match=r"judge|share"):
        angoff(ratings)
