"""How lines are counted, and how a wall chart is laid out on its sheet."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from basinside import files
from basinside.derive.everything import derive
from basinside.derive.wall_charts import SIZES_POINTS
from basinside.derive.wall_charts.step_lines import StepLines
from basinside.derive.wall_charts.strip import runs
from basinside.derive.wall_charts.text_width import (
    BOLD_WIDTHS,
    UNKNOWN,
    WIDTHS,
    lines_of,
    text_lines,
    width,
)
from basinside.load.content import load
from basinside.model.derived import Derived
from tests.built import CHECKOUT


@pytest.fixture(scope="module")
def derived() -> Derived:
    return derive(load(files.read_authored(CHECKOUT))[0])


def test_a_word_is_as_wide_as_its_letters() -> None:
    assert width("il") == WIDTHS["i"] + WIDTHS["l"]
    assert width("il", bold=True) == BOLD_WIDTHS["i"] + BOLD_WIDTHS["l"]
    assert width("水") == UNKNOWN


def test_bold_is_never_narrower() -> None:
    assert [letter for letter in WIDTHS if BOLD_WIDTHS.get(letter, UNKNOWN) < WIDTHS[letter]] == []


@pytest.mark.parametrize(
    ("words", "lines"),
    [
        ([40], 1),
        ([40, 30], 1),
        ([40, 31], 2),
        ([100, 1], 2),
        ([101], 2),
        ([250], 3),
        ([60, 250], 4),
    ],
)
def test_words_are_set_on_the_first_line_that_has_room(words: list[int], lines: int) -> None:
    assert lines_of(words, room=100, space=30) == lines


@given(st.lists(st.integers(1, 400), min_size=1, max_size=30), st.integers(50, 300))
def test_lines_are_never_fewer_than_the_words_need(words: list[int], room: int) -> None:
    assert lines_of(words, room) * room >= sum(words)


@given(st.lists(st.integers(1, 400), min_size=1, max_size=30), st.integers(50, 300))
def test_more_room_never_takes_more_lines(words: list[int], room: int) -> None:
    assert lines_of(words, room + 400) <= lines_of(words, room)


def test_a_text_is_parted_at_its_spaces_alone() -> None:
    room = width("ab") + 1
    assert text_lines("ab ab", room) == 2
    assert text_lines("ab", room) == 1


def test_every_step_stands_in_one_column_in_order(derived: Derived) -> None:
    assert len(derived.wall_charts) == len(derived.procedures) > 20
    for name, chart in derived.wall_charts.items():
        numbers = [number for column in chart.columns for number in column]
        assert numbers == [placed.number for placed in derived.procedures[name].steps], name
        assert chart.points in SIZES_POINTS


def test_no_chart_is_smaller_than_what_is_read_at_arms_length(derived: Derived) -> None:
    assert min(SIZES_POINTS) == 14
    short = derived.wall_charts["uterine-aspirator-heatproof-vacuum-test"]
    long = derived.wall_charts["delivery-set-steam"]
    assert short.points > long.points


def test_a_value_that_the_sentence_leaves_out_stands_beside_it(derived: Derived) -> None:
    chart = derived.wall_charts["bag-mask-silicone-boil"]
    assert "boil.hold" in dict(chart.beside).values()
    whole = derived.procedures["bag-mask-silicone-boil"]
    for number, figure in chart.beside:
        said = whole.steps[number - 1].step.wall or whole.steps[number - 1].step.do
        assert f"{{{{ {figure}" not in said


@pytest.mark.parametrize(
    ("numbers", "written"),
    [((), ""), ((4,), "4"), ((1, 2, 3), "1–3"), ((1, 3, 4, 9), "1, 3–4, 9")],
)
def test_numbers_in_a_row_are_written_as_one_span(numbers: tuple[int, ...], written: str) -> None:
    assert runs(numbers) == written


def test_all_that_is_worn_has_its_place(derived: Derived) -> None:
    for name, chart in derived.wall_charts.items():
        steps = derived.procedures[name].steps
        assert {each for each, _steps in chart.worn} == {e for placed in steps for e in placed.wear}
        for worn, said in chart.worn:
            asked = [placed.number for placed in steps if worn in placed.wear]
            assert said in {"", runs(asked)}, name


def test_every_danger_has_its_sign_and_most_have_their_word(derived: Derived) -> None:
    short = []
    for name, chart in derived.wall_charts.items():
        steps = derived.procedures[name].steps
        dangers = {placed.number for placed in steps if placed.step.danger}
        assert chart.fits, name
        assert set(chart.named) <= dangers, name
        short += [name] if set(chart.named) < dangers else []
    assert 0 < len(short) < len(derived.wall_charts) / 2


def test_a_sign_without_its_word_has_the_line_under_its_number(derived: Derived) -> None:
    """What stands under the number takes no line where the sentence has two of its own."""
    content = load(files.read_authored(CHECKOUT))[0]
    lines = StepLines(content)
    for whole in derived.procedures.values():
        for placed in whole.steps:
            without = placed.step.model_copy(update={"danger": None})
            bare = placed._replace(step=without, danger=None)
            alone = lines.count(bare, "", 1_800, word=False)
            with_sign = lines.count(placed, "", 1_800, word=False)
            assert with_sign == (max(alone, 2) if placed.step.danger else alone)


def test_a_chemical_of_the_steps_says_whom_to_ring(derived: Derived) -> None:
    assert derived.wall_charts["making-up-chlorine"].chemical_contact == "chemical-or-burn"
    assert derived.wall_charts["steam-load"].chemical_contact == ""
