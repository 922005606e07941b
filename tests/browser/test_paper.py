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
