"""Near twins are those that comparing each with each finds, and thousands cost little."""

import doctest
import random
from collections.abc import Iterable
from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from basinside.check import near_twins as module
from basinside.check.near_twins import near_twins, overlap

SHARE = 0.8
TEXTS = st.lists(st.text(st.sampled_from("abcdefghijkl"), max_size=14), max_size=12)


def anyone(one: int, other: int) -> bool:
    return one < other


def plainly(sets: list[str]) -> list[tuple[int, int]]:
    """Compare each with each; what is a twin of an earlier one stands for no other."""
    twins: dict[int, int] = {}
    for one, other in combinations(range(len(sets)), 2):
        if one in twins or other in twins:
            continue
        if overlap(sets[one], sets[other]) > SHARE:
            twins[other] = one
    return sorted((one, other) for other, one in twins.items())


@given(TEXTS)
def test_the_same_items_are_twins_as_when_each_is_compared_with_each(
    sets: list[str],
) -> None:
    found = list(near_twins(sets, SHARE, anyone))
    assert {later for _, later in found} == {later for _, later in plainly(sets)}
    assert all(overlap(sets[one], sets[other]) > SHARE for one, other in found)
    assert all(one < other for one, other in found)


def test_four_of_five_words_are_not_more_than_four_of_five() -> None:
    assert overlap("abcd", "abcde") == 0.8
    assert list(near_twins(["abcd", "abcde"], SHARE, anyone)) == []
    assert list(near_twins(["abcdef", "abcde"], SHARE, anyone)) == [(0, 1)]


def test_who_may_not_be_told_of_is_not() -> None:
    same = "abcdef"
    asked = list(near_twins([same, same, same], SHARE, lambda one, other: (one, other) != (0, 1)))
    assert asked == [(0, 2)]


def test_thousands_are_not_compared_with_thousands() -> None:
    chance = random.Random(7)
    words = [f"w{n}" for n in range(3_000)]
    weights = [1 / (n + 1) for n in range(3_000)]
    sets = [chance.choices(words, weights, k=30) for _ in range(3_000)]
    asked = 0

    def fits(one: int, other: int) -> bool:
        nonlocal asked
        asked += 1
        return anyone(one, other)

    assert list(near_twins(sets, SHARE, fits)) == []
    assert len(list(near_twins([sets[0]] * 3_000, SHARE, fits))) == 2_999
    assert asked == 2_999


def test_few_are_compared(monkeypatch: pytest.MonkeyPatch) -> None:
    chance = random.Random(7)
    words = [f"w{n}" for n in range(600)]
    texts = [chance.choices(words, k=40) for _ in range(2_000)]
    compared = 0

    def counting(one: Iterable[object], other: Iterable[object]) -> float:
        nonlocal compared
        compared += 1
        return overlap(one, other)

    monkeypatch.setattr(module, "overlap", counting)
    assert list(near_twins(texts, SHARE, anyone)) == []
    assert compared < 10_000  # of two million pairs


def test_the_examples_of_the_page() -> None:
    assert doctest.testmod(module).failed == 0
