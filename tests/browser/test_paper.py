"""What is printed fits the paper it was made for, on A4 and on Letter."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser

PAPERS = ("A4", "Letter")
MOST_SHEETS = {"procedures/": 2, "print/observation-": 1}
"""Two sheets to lay beside the basin; an observation sheet is one side, to tick and to sign."""


def _sheets(browser: Browser, page: Path, paper: str) -> int:
    tab = browser.new_page()
    try:
        tab.goto(page.as_uri())
        return len(re.findall(rb"/Type\s*/Page\b", tab.pdf(format=paper)))
    finally:
        tab.close()


SMALLEST_PT = 9.5
SMALL = """(least) => [...document.querySelectorAll('.opening *, .headline *, .stages *')]
  .filter((each) => each.checkVisibility() && !each.closest('svg')
    && [...each.childNodes].some((node) => node.nodeType === 3 && node.textContent.trim())
    && parseFloat(getComputedStyle(each).fontSize) * 0.75 < least - 0.01)
  .map((each) => each.outerHTML.slice(0, 80))"""


def _printed(browser: Browser, page: Path) -> tuple[str, list[str]]:
    tab = browser.new_page()
    try:
        tab.emulate_media(media="print")
        tab.goto(page.as_uri())
        return tab.inner_text("main"), tab.evaluate(SMALL, SMALLEST_PT)
    finally:
        tab.close()


def test_paper_says_what_to_do_when_a_test_fails_and_how_to_lubricate(
    built_demo: Path, chromium_browser: Browser
) -> None:
    page = built_demo / "procedures" / "uterine-aspirator-coldonly-soak.html"
    said, small = _printed(chromium_browser, page)
    lines = page.read_text(encoding="utf-8").count("<b>If not:</b>")
    assert lines > 2
    assert said.count("If not:") == lines
    for word in ("How much:", "When:", "Never: petroleum jelly", "If interrupted:", "Wear:"):
        assert word in said, word
    assert "A black bar marks a safety step" in said
    assert small == []


@pytest.mark.parametrize("paper", PAPERS)
def test_prints_take_no_more_sheets_than_promised(
    built_demo: Path, chromium_browser: Browser, paper: str
) -> None:
    pages = {page.relative_to(built_demo).as_posix(): page for page in built_demo.rglob("*.html")}
    wrong, seen = [], 0
    for name, page in sorted(pages.items()):
        for begin, most in MOST_SHEETS.items():
            if name.startswith(begin) and name != "procedures/index.html":
                seen += 1
                sheets = _sheets(chromium_browser, page, paper)
                if not 0 < sheets <= most:
                    wrong.append(f"{name} takes {sheets} sheets of {paper}, not {most}")
    assert seen >= 8
    assert wrong == []
