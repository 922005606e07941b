"""What must stay small: every page on a slow stick, and what stays in sight in a low window."""

from pathlib import Path
from typing import Final

import pytest

from tests import built
from tests.conftest import Opener

pytestmark = pytest.mark.browser

MOST_BYTES: Final = 150_000
ZOOMED: Final = (320, 256)
"""A window of 1280 x 1024 at 400 %, the zoom that WCAG 2.2, 1.4.10 asks a page to bear."""
MOST_COVERED: Final = 1 / 3

# Every element that can stay in sight while the page moves, by the share of the window it takes.
COVERED: Final = """() => [...document.querySelectorAll('body *')]
  .filter((each) => ['sticky', 'fixed'].includes(getComputedStyle(each).position))
  .map((each) => [each.className, each.getBoundingClientRect().height / innerHeight])"""
MANY_TIMES: Final = "() => document.querySelectorAll('.time-start').forEach((each) => each.click())"


def test_no_page_is_over_150_kb(built_demo: Path) -> None:
    sizes = {
        path.relative_to(built_demo).as_posix(): path.stat().st_size
        for path in built.pages(built_demo)
    }
    assert {name: size for name, size in sizes.items() if size > MOST_BYTES} == {}


def test_the_ruler_sees_what_stays_in_sight(tmp_path: Path, open_page: Opener) -> None:
    bad = tmp_path / "bad.html"
    bad.write_text("<!doctype html><p class=a style='position:sticky;top:0;height:128px'>stays")
    assert open_page(bad, size=ZOOMED).evaluate(COVERED) == [["a", 0.5]]


def test_nothing_covers_a_third_of_a_page_at_400_percent(
    built_demo: Path, open_page: Opener
) -> None:
    wrong = {}
    page = open_page("index.html", size=ZOOMED)
    for path in built.pages(built_demo):
        page.goto(path.as_uri())
        covered = [each for each in page.evaluate(COVERED) if each[1] > MOST_COVERED]
        if covered:
            wrong[path.name] = covered
    assert not wrong


def test_running_times_cover_nothing_at_400_percent(built_demo: Path, open_page: Opener) -> None:
    page = open_page("procedures/bag-mask-silicone-soak.html", size=ZOOMED)
    page.locator(".time-start").first.wait_for()  # the page looks first for times that run
    page.evaluate(MANY_TIMES)
    page.locator(".timers .time").first.wait_for()
    assert [each for each in page.evaluate(COVERED) if each[1] > MOST_COVERED] == []
