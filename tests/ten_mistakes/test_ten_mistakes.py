"""Ten mistakes that a tired author makes: each is named at its place, with its mend."""

from typing import Any

import pytest

from tests.ten_mistakes.mistaken import PAGE, changed, demonstration, mistakes, page, said_of

ACCEPT = "python -m tests.ten_mistakes accept"
NAMES = {
    "Wrong order",
    "Wrong unit",
    "Forgotten rinse",
    "Copied question",
    "Stale key",
    "Decimal comma",
    "Wrong altitude",
    "Protection gone",
    "Part forgotten",
    "Source out of date",
}


def test_there_are_ten() -> None:
    assert {each["mistake"] for each in mistakes()} == NAMES


@pytest.mark.parametrize("mistake", mistakes(), ids=lambda each: str(each["mistake"]))
def test_a_mistake_changes_one_file_and_is_named(mistake: dict[str, Any]) -> None:
    file, text = changed(mistake)
    assert text != demonstration()[file].decode()
    said = said_of(mistake)
    assert [line for line in mistake["expect"] if line not in said] == []


def test_the_page_is_as_it_was_read() -> None:
    assert page() == PAGE.read_text(encoding="utf-8"), f"read what changed, then {ACCEPT}"
