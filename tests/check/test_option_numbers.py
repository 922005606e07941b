"""Options that are numbers or ranges are read as such, and overlap where a number is in both."""

import pytest

from basinside.check.item_words import ITEM_WORDS
from basinside.check.option_numbers import numbers_in

ENGLISH = ITEM_WORDS["en"]


@pytest.mark.parametrize(
    ("one", "other", "meets"),
    [
        ("20 min", "1200 s", True),
        ("5 to 10 min", "10 to 15 min", True),
        ("5 to 9 min", "10 to 15 min", False),
        ("5–10 min", "8 min", True),
        ("Less than 10 min", "10 min or more", False),
        ("At most 10 min", "10 min or more", True),
        ("At least 20 min", "At least 10 min", True),
        ("More than 20 min", "20 min", False),
        ("Under 5 min", "Over 20 min", False),
        ("10 to 20", "15", True),
        ("20 min", "20 °C", False),
        ("Above 100 mL", "1 L", True),
        ("150 kPa gauge", "At least 1 bar gauge", True),
        ("0.1 % available chlorine", "0.05 to 0.2 % available chlorine", True),
    ],
)
def test_two_options_meet_where_a_number_is_in_both(one: str, other: str, meets: bool) -> None:
    first, second = numbers_in(one, ENGLISH), numbers_in(other, ENGLISH)
    assert first is not None
    assert second is not None
    assert first.meets(second) is meets
    assert second.meets(first) is meets


@pytest.mark.parametrize(
    "text",
    [
        "",
        "A tray",
        "20 min after the last part went under",
        "20 parsec",
        "10 to 5 min",
        "Up to here",
    ],
)
def test_what_is_more_than_a_number_is_none(text: str) -> None:
    assert numbers_in(text, ENGLISH) is None


def test_without_words_only_a_single_number_is_read() -> None:
    assert numbers_in("20 min", None) is not None
    assert numbers_in("5 to 10 min", None) is None
