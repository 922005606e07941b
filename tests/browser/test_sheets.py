"""Monday's paper: one sheet each, every box in its place, nothing said by colour alone."""

from __future__ import annotations

import json
import os
from collections.abc import Iterator
from pathlib import Path
from typing import Literal

import pytest
from playwright.sync_api import Browser, Page

from tests.browser import printed

GOLDEN = Path(__file__).parents[1] / "golden" / "paper"
PICTURED = (
    "exposure-card",
    "chemical-accident-card",
    "dilution-card",
    "boiling-and-gauge-card",
    "soak-log",
    "load-record",
    "test-log",
    "strength-check-log",
    "solution-label",
    "use-tally-uterine-aspirator-heatproof",
    "wall-chart-bag-mask-silicone-boil",
    "wall-chart-delivery-set-steam",
)
BOXED = ("dilution-card", "boiling-and-gauge-card", "wall-chart-bag-mask-silicone-boil", "soak-log")
ACCEPT = "BASINSIDE_ACCEPT_PAPER"
MOST_DIFFERENT = 3.0
"""Of 255, in the mean over a small picture: a line that moved, not another edge of a letter."""
MOST_COLOUR = 6
HIDE_SIGNS = """() => document
  .querySelectorAll('.label-signs svg, .chart-wear svg, .chart-danger svg')
  .forEach((each) => { each.style.visibility = 'hidden'; })"""
WIDER = """(heads) => heads.filter((each) => each.scrollWidth > each.clientWidth)
  .map((each) => each.textContent)"""
SIZE = "(each) => parseFloat(getComputedStyle(each).fontSize) * 72 / 96"
STAMPED = (
    "Edition2026.2",
    "Reviewdue1October2027",
    "Voidafter1October2027",
    "bynight",
    "Firstofallthemanufacturer'sinstructions",
)


@pytest.fixture(scope="module")
def browser(
    tmp_path_factory: pytest.TempPathFactory, chromium_browser: Browser
) -> Iterator[Browser]:
    with printed.pinned(tmp_path_factory.mktemp("fonts"), chromium_browser) as started:
        yield started


@pytest.fixture(scope="module")
def lamp(browser: Browser) -> Page:
    """An empty page in which pictures are measured."""
    return browser.new_page()


def _all(built_demo: Path) -> list[Path]:
    names = sorted((built_demo / "print").glob("*.html"))
    return [each for each in names if each.stem != "index" and "observation" not in each.stem]


def _sheet(built_demo: Path, name: str) -> str:
    return (built_demo / "print" / f"{name}.html").as_uri()


def _picture(browser: Browser, address: str) -> bytes:
    page = printed.as_paper(browser, address)
    shot = page.locator(".print-sheet").screenshot()
    page.close()
    return shot


def _apart(one: list[int], other: list[int]) -> float:
    return sum(abs(a - b) for a, b in zip(one, other, strict=True)) / len(one)


@pytest.mark.parametrize("paper", printed.PAPERS)
def test_every_sheet_is_one_sheet(built_demo: Path, browser: Browser, paper: str) -> None:
    pages = _all(built_demo)
    assert len(pages) > 30
    page = printed.as_paper(browser, pages[0].as_uri())
    wrong = {}
    for each in pages:
        page.goto(each.as_uri())
        count, over = printed.sheets(page, paper), printed.over(page)
        if count != 1 or over:
            wrong[each.stem] = (count, over)
    page.close()
    assert wrong == {}


def test_what_a_sheet_says_at_its_foot_and_in_which_size(
    built_demo: Path, browser: Browser
) -> None:
    page = browser.new_page()
    page.emulate_media(media="print")
    for each in _all(built_demo):
        page.goto(each.as_uri())
        text = "".join(page.inner_text(".print-sheet").split())
        assert [words for words in STAMPED if words not in text] == [], each.stem
        if each.stem.startswith("wall-chart-"):
            assert page.locator(".chart-steps p").first.evaluate(SIZE) >= 14, each.stem
    page.close()


def test_an_overdue_sheet_is_stamped_and_still_one_sheet(
    built_demo: Path, browser: Browser
) -> None:
    page = printed.as_paper(browser, _sheet(built_demo, "wall-chart-speculum-steam"))
    page.evaluate("() => { document.getElementById('review-overdue').hidden = false; }")
    assert "Review overdue" in page.inner_text("body")
    stamp = page.locator("#review-overdue").bounding_box()
    assert stamp is not None
    assert stamp["y"] < 100
    assert [printed.sheets(page, paper) for paper in printed.PAPERS] == [1, 1]
    page.close()


@pytest.mark.parametrize("media", ["screen", "print"])
def test_a_sheet_owns_up_once_to_be_a_demonstration(
    built_demo: Path, browser: Browser, media: Literal["screen", "print"]
) -> None:
    page = browser.new_page()
    page.emulate_media(media=media)
    for name in PICTURED:
        page.goto(_sheet(built_demo, name))
        assert page.inner_text("body").count("Demonstration") == 1, name
    page.close()


def test_a_log_is_read_whole_on_a_narrow_screen(built_demo: Path, browser: Browser) -> None:
    """It scrolls inside its frame; the page does not, and no head is broken inside a word."""
    page = browser.new_page(viewport={"width": 390, "height": 844})
    for name in ("soak-log", "load-record"):
        page.goto(_sheet(built_demo, name))
        assert page.evaluate("() => document.scrollingElement.scrollWidth") <= 390
        assert page.locator(".log-frame").evaluate("(each) => each.scrollWidth > each.clientWidth")
        assert page.locator(".log th").evaluate_all(WIDER) == []
    page.close()


def test_the_button_prints_the_sheet(built_demo: Path, browser: Browser) -> None:
    page = browser.new_page()
    page.add_init_script("window.asked = 0; window.print = () => { window.asked += 1; };")
    page.goto(_sheet(built_demo, "soak-log"))
    page.get_by_role("button", name="Print this sheet").click()
    assert page.evaluate("() => window.asked") == 1
    page.close()


@pytest.mark.parametrize("name", BOXED)
def test_boxes_are_where_they_were(built_demo: Path, browser: Browser, name: str) -> None:
    page = printed.as_paper(browser, _sheet(built_demo, name))
    found = printed.boxes(page)
    page.close()
    assert len(found) > 5
    kept = GOLDEN / f"{name}.json"
    if os.environ.get(ACCEPT):
        kept.parent.mkdir(exist_ok=True)
        lines = ",\n".join(json.dumps(each) for each in found)
        kept.write_text(f"[\n{lines}\n]\n", encoding="utf-8")
    assert found == json.loads(kept.read_text(encoding="utf-8")), f"look, then set {ACCEPT}=1"


@pytest.mark.parametrize("name", PICTURED)
def test_a_sheet_looks_as_it_did(built_demo: Path, browser: Browser, lamp: Page, name: str) -> None:
    now, file = printed.shrunk(lamp, _picture(browser, _sheet(built_demo, name)))
    kept = GOLDEN / f"{name}.png"
    if os.environ.get(ACCEPT):
        kept.parent.mkdir(exist_ok=True)
        kept.write_bytes(file)
    before, _file = printed.shrunk(lamp, kept.read_bytes())
    apart = _apart(now, before)
    assert apart <= MOST_DIFFERENT, f"{name}: {apart:.1f} apart; look, then set {ACCEPT}=1"


def test_a_moved_line_would_be_seen(built_demo: Path, browser: Browser, lamp: Page) -> None:
    page = printed.as_paper(browser, _sheet(built_demo, "dilution-card"))
    before = page.locator(".print-sheet").screenshot()
    page.evaluate("() => { document.querySelector('.sheet-lead').textContent = ''; }")
    after = page.locator(".print-sheet").screenshot()
    page.close()
    apart = _apart(printed.shrunk(lamp, before)[0], printed.shrunk(lamp, after)[0])
    assert apart > MOST_DIFFERENT


def test_a_photocopy_loses_nothing(built_demo: Path, browser: Browser, lamp: Page) -> None:
    """Every dot is a grey, but for signs, which have their words beside them."""
    page = printed.as_paper(browser, _sheet(built_demo, "solution-label"))
    coloured = page.locator(".print-sheet").screenshot()
    assert printed.most_colour(lamp, coloured) > MOST_COLOUR
    signs = page.locator(".label-signs li")
    assert signs.count() > 0
    assert [text for text in signs.all_inner_texts() if not text.strip()] == []
    for name in PICTURED:  # one of every kind
        page.goto(_sheet(built_demo, name))
        page.evaluate(HIDE_SIGNS)
        shot = page.locator(".print-sheet").screenshot()
        assert printed.most_colour(lamp, shot) <= MOST_COLOUR, name
    page.close()


def test_a_safety_step_has_its_rule_and_its_words(built_demo: Path, browser: Browser) -> None:
    page = printed.as_paper(browser, _sheet(built_demo, "wall-chart-bag-mask-silicone-boil"))
    safety = page.locator(".chart-steps li.safety")
    assert safety.count() > 5
    assert all("Safety step" in text for text in safety.all_inner_texts())
    rule = safety.first.evaluate("(each) => parseFloat(getComputedStyle(each).borderLeftWidth)")
    assert rule >= 6
    page.close()
