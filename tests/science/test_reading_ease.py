"""Flesch-Kincaid and LIX against printed and counted numbers."""

import doctest

import pytest

from basinside.check.item_texts import words_of
from basinside.science import reading_ease
from basinside.science.reading_ease import LONG_WORD, SyllableCounts, lix, school_grade, syllables

WASHER = (
    "Wear heavy-duty gloves before you open the washer. Rinse each lumen with clean water. Do not"
    " let soil dry on the instrument. Check the chemical indicator on every pack. If the indicator"
    " has not changed, do not release the load. Tell your supervisor."
)


@pytest.mark.parametrize(
    ("counts", "grade"),
    [
        ((1, 1, 1), -3.40),  # the least there can be, as its makers state it
        ((6, 1, 6), -1.45),  # The cat sat on the mat.
        ((100, 5, 150), 9.91),
        ((43, 6, 66), 5.3166),
    ],
)
def test_worked_grades(counts: tuple[int, int, int], grade: float) -> None:
    assert school_grade(*counts) == pytest.approx(grade, abs=1e-4)


def test_worked_lix() -> None:
    assert lix(100, 5, 25) == 45.0
    words = words_of(WASHER)
    assert len(words) == 43
    assert sum(len(word) > LONG_WORD for word in words) == 8
    assert lix(len(words), 6, 8) == pytest.approx(25.771318, abs=1e-5)


def test_syllables_are_counted_about_as_people_count_them() -> None:
    counted = {
        "gloves": 1, "rinse": 1, "washed": 1, "soiled": 1, "wasted": 2, "little": 2, "rinses": 2,
        "table": 2, "brushes": 2, "chemical": 3, "indicator": 4, "supervisor": 4, "the": 1,
    }  # fmt: skip
    assert {word: syllables(word) for word in counted} == counted
    # Counted by hand 66; a dictionary of pronunciations says 64.
    assert 64 <= SyllableCounts().of(words_of(WASHER)) <= 68


def test_the_examples_of_the_pages() -> None:
    assert doctest.testmod(reading_ease).failed == 0
