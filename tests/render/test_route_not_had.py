"""A procedure whose route the clinic does not have is said to be so, and no chart of it is made."""

from dataclasses import replace

import pytest

from basinside.derive.everything import derive
from basinside.pipeline.build import handbook_files, open_theme
from tests.render.pages_of_demo import demo, words

GONE = "steam-wrapped"
GIVEN_UP = "speculum-steam"
KEPT = "speculum-boil"


@pytest.fixture(scope="module")
def without() -> dict[str, str]:
    clinic = demo()
    handbook = clinic.content.handbook
    assert handbook is not None
    had = tuple(each for each in handbook.clinic.has if each != GONE)
    assert len(had) == len(handbook.clinic.has) - 1
    place = handbook.clinic.model_copy(update={"has": had})
    content = replace(clinic.content, handbook=handbook.model_copy(update={"clinic": place}))
    made = handbook_files(replace(clinic, content=content, derived=derive(content)), open_theme())
    return {path: make() for path, make in made if path.endswith(".html")}


def test_its_page_says_so_first(without: dict[str, str]) -> None:
    page = words(without[f"procedures/{GIVEN_UP}.html"])
    said = "Not possible here Steam, wrapped: not among the ways that this clinic has."
    assert said in page
    assert page.index(said) < page.index("Needs at least")
    assert "Not possible here" not in words(without[f"procedures/{KEPT}.html"])


def test_no_chart_of_it_is_made_and_none_is_led_to(without: dict[str, str]) -> None:
    assert f"print/wall-chart-{KEPT}.html" in without
    assert f"print/wall-chart-{GIVEN_UP}.html" not in without
    assert [path for path, page in without.items() if f"wall-chart-{GIVEN_UP}" in page] == []
    assert f"observation-{GIVEN_UP}" not in without["print/index.html"]


def test_lists_of_procedures_tell_it_apart(without: dict[str, str]) -> None:
    assert "Steam, wrapped not possible here" in words(without["instruments/speculum.html"])
    assert "Not possible here The clinic has no such way" in words(without["procedures/index.html"])


def test_the_shift_does_not_offer_it(without: dict[str, str]) -> None:
    assert GIVEN_UP not in without["today.html"]
    assert KEPT in without["today.html"]
