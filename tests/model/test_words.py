"""The closed lists: each word once, levels rising, and every list printed."""

from itertools import pairwise, product

import pytest

from basinside.model.words import (
    ALL_LISTS,
    BASES_WITHOUT_SOURCE,
    CARE_LEVELS,
    CONTACT_GRAVITY,
    LEVEL_FOR_CONTACT,
    STAGES,
    CareLevel,
    at_least,
    lower_of,
)


@pytest.mark.parametrize("name", ALL_LISTS)
def test_each_word_stands_once_and_can_be_typed(name: str) -> None:
    words = ALL_LISTS[name]
    assert len(words) == len({each.casefold() for each in words}) > 1
    for word in words:
        assert word == " ".join(word.split()).casefold()
        assert word.isascii()
        assert not set(word) & set(":#{}[]&*!|>'\"%@`,")


def test_levels_rise_as_the_trade_says() -> None:
    assert CARE_LEVELS == (
        "clean and dry",
        "low-level disinfection",
        "intermediate-level disinfection",
        "high-level disinfection",
        "sterile",
    )


def test_a_level_reaches_itself_and_all_below() -> None:
    for n, level in enumerate(CARE_LEVELS):
        assert all(at_least(level, lower) for lower in CARE_LEVELS[: n + 1])
        assert not any(at_least(level, higher) for higher in CARE_LEVELS[n + 1 :])


@pytest.mark.parametrize(("one", "other"), [*product(CARE_LEVELS, CARE_LEVELS)])
def test_the_lower_of_two_is_reached_by_both(one: CareLevel, other: CareLevel) -> None:
    lower = lower_of(one, other)
    assert lower == lower_of(other, one)
    assert lower in {one, other}
    assert at_least(one, lower)
    assert at_least(other, lower)


def test_every_contact_has_a_level_and_a_graver_one_never_a_lower() -> None:
    levels = [LEVEL_FOR_CONTACT[each] for each in CONTACT_GRAVITY]
    assert set(LEVEL_FOR_CONTACT) == set(CONTACT_GRAVITY)
    assert all(at_least(graver, lighter) for graver, lighter in pairwise(levels))


def test_the_stages_are_those_of_the_instructions_for_processing() -> None:
    # ISO 17664-1:2021, clause 6: the headings that instructions for processing have.
    assert STAGES == (
        "point of use",
        "preparation",
        "cleaning",
        "disinfection",
        "drying",
        "inspection and maintenance",
        "packaging",
        "sterilization",
        "storage",
        "transport",
    )


def test_only_what_nobody_printed_needs_no_source() -> None:
    assert {"common practice", "from memory"} == BASES_WITHOUT_SOURCE
    assert set(ALL_LISTS["basis"]) >= BASES_WITHOUT_SOURCE
