"""What is overdue is marked by the day of the device, and only by a script."""

import pytest
from playwright.sync_api import expect

from tests.conftest import Opener

pytestmark = pytest.mark.browser


def marked(open_page: Opener, today: str) -> tuple[int, int]:
    """Return how many days of the page are marked on a day, and how many there are."""
    page = open_page("index.html")
    page.clock.set_fixed_time(f"{today}T09:00:00")
    page.goto(page.url.replace("index.html", "due.html"))
    marks = page.locator("[data-after]")
    expect(marks.first).to_be_attached()
    shown = page.evaluate(
        "() => [...document.querySelectorAll('[data-after]')].filter((e) => !e.hidden).length"
    )
    return shown, marks.count()


def test_nothing_is_overdue_on_the_last_good_day_and_all_is_much_later(open_page: Opener) -> None:
    page = open_page("due.html")
    days = page.eval_on_selector_all("[data-after]", "all => all.map((e) => e.dataset.after)")
    first = min(days)
    assert marked(open_page, first)[0] == 0
    after = f"{first[:-2]}{int(first[-2:]) + 1:02}"
    assert marked(open_page, after)[0] == days.count(first)
    assert marked(open_page, "2040-01-01") == (len(days), len(days))
