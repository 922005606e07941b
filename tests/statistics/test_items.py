"""Item statistics against published answers and values of other programs."""

from collections.abc import Callable, Sequence
from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from basinside.statistics.difficulty import difficulty
from basinside.statistics.discrimination import item_rest
from basinside.statistics.kuder_richardson import kr20, kr21, score_mean, score_variance
from basinside.statistics.marks import Marks
from basinside.statistics.option_counts import option_counts
from tests.statistics.published import LAW_SCHOOL_MARKS, TEN_MARKS


def difficulties(marks: Marks) -> list[float]:
    found = [difficulty(column) for column in zip(*marks, strict=True)]
    return [float(each) for each in found if each is not None]


def test_difficulties() -> None:
    # C01: Bock and Lieberman 1970; the ten students: printed by Wuensch.
    assert difficulties(LAW_SCHOOL_MARKS) == [0.924, 0.709, 0.553, 0.763, 0.870]
    assert difficulties(TEN_MARKS) == [0.7, 0.7, 0.6, 0.7, 0.6, 0.8, 0.7, 0.7, 0.5, 0.6]


def test_who_was_not_shown_an_item_does_not_count() -> None:
    assert difficulty([1, 0, None, None]) == Fraction(1, 2)
    assert difficulty([None]) is None
    with pytest.raises(ValueError, match="1 for right"):
        difficulty([2])


def test_item_with_rest() -> None:
    # C02, as another program gives it (R psych, r.drop); C50: the seventh and ninth are negative.
    assert item_rest(LAW_SCHOOL_MARKS) == pytest.approx(
        [0.112833, 0.153178, 0.172779, 0.144428, 0.121596], abs=1e-6
    )
    ten = item_rest(TEN_MARKS)
    assert ten == pytest.approx(
        [0.7059, 0.7059, 0.0, 0.4736, 0.5839, 0.2861, -0.0274, 0.7059, -0.1236, 0.4759], abs=5e-5
    )
    assert [n for n, each in enumerate(ten, 1) if each is not None and each < 0] == [7, 9]
    assert ten[2] == 0.0


def test_there_is_no_correlation_where_nothing_varies() -> None:
    assert item_rest([[1, 1, 0], [1, 0, 1]])[0] is None
    assert item_rest([[1, 0], [0, 0]]) == (None, None)


@st.composite
def answered(draw: st.DrawFn) -> list[list[int]]:
    items = draw(st.integers(2, 8))
    row = st.lists(st.integers(0, 1), min_size=items, max_size=items)
    return draw(st.lists(row, min_size=2, max_size=30))


@given(answered())
def test_item_with_rest_is_that_of_another_program(marks: list[list[int]]) -> None:
    table = np.array(marks)
    for n, found in enumerate(item_rest(marks)):
        rest = table.sum(axis=1) - table[:, n]
        if found is None:
            assert table[:, n].std() == 0 or rest.std() == 0
        else:
            assert found == pytest.approx(np.corrcoef(table[:, n], rest)[0, 1], abs=1e-9)


def test_reliabilities() -> None:
    assert kr20(LAW_SCHOOL_MARKS) == pytest.approx(0.2949972, abs=1e-7)  # C03
    mean, variance = score_mean(LAW_SCHOOL_MARKS), score_variance(LAW_SCHOOL_MARKS)
    assert mean == Fraction(3819, 1000)
    assert float(variance) == pytest.approx(1.070239, abs=5e-7)
    assert kr21(5, mean, variance) == pytest.approx(0.1964412, abs=1e-7)  # C04
    assert kr20(TEN_MARKS) == pytest.approx(0.6963470, abs=1e-7)  # C07
    assert float(score_variance(TEN_MARKS)) == 5.84  # printed
    assert kr21(10, score_mean(TEN_MARKS), score_variance(TEN_MARKS)) == pytest.approx(0.6841705)


@given(answered())
def test_formula_20_is_alpha_and_never_below_21(marks: list[list[int]]) -> None:
    table, items = np.array(marks), len(marks[0])
    found, simple = kr20(marks), kr21(items, score_mean(marks), score_variance(marks))
    if found is None or simple is None:
        assert table.sum(axis=1).std() == 0
        return
    one_less = table.var(axis=0, ddof=1).sum() / table.sum(axis=1).var(ddof=1)
    assert found == pytest.approx(items / (items - 1) * (1 - one_less), abs=1e-9)
    assert simple <= found + 1e-12


@pytest.mark.parametrize(
    ("ask", "marks"),
    [(kr20, []), (kr20, [[]]), (item_rest, [[1, 0], [1]]), (item_rest, [[1, 2]])],
)
def test_what_are_no_marks(ask: Callable[[Marks], object], marks: Marks) -> None:
    with pytest.raises(ValueError, match=r"answer|mark"):
        ask(marks)


def test_one_item_has_no_reliability() -> None:
    assert kr20([[1], [0]]) is None
    with pytest.raises(ValueError, match="one item"):
        kr21(1, 1, 1)


def chosen(*counts: int) -> Sequence[int]:
    return [n for n, count in enumerate(counts) for _ in range(count)]


def test_options_of_a_few_people_are_counted_and_nothing_more() -> None:
    # Assessment science, section 7: eleven upper and eleven lower, key B.
    found = option_counts(chosen(5, 13, 4, 0), 4, 1)
    assert (found.people, found.counts, found.shares) == (22, (5, 13, 4, 0), None)
    assert found.idle == found.beats_key == ()
    assert option_counts(chosen(0, 29), 2, 1).shares is None
    assert option_counts(chosen(0, 30), 2, 1).shares == (Fraction(0), Fraction(1))


@pytest.mark.parametrize(("choosers", "idle"), [(1, (2,)), (2, ())])
def test_an_option_that_one_in_twenty_choose_still_works(
    choosers: int, idle: tuple[int, ...]
) -> None:
    # Assessment science, section 7: of 40, one is too few and two are not.
    assert option_counts(chosen(30, 10 - choosers, choosers), 3, 0).idle == idle


def test_a_wrong_option_chosen_more_often_than_the_right_one_is_named() -> None:
    # As in a published item of rotated shapes: right .19, another .22 (psychTools, rotate.3).
    found = option_counts([*chosen(10, 19, 22, 40), None, *[None] * 8], 4, 1)
    assert (found.people, found.beats_key) == (100, (2, 3))
    with pytest.raises(ValueError, match="0 to 2"):
        option_counts([3], 3, 0)
