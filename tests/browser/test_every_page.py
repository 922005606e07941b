"""What every page of the built demo handbook must do in a browser.

What is cheap is asked of every page. The rules of axe take half a second a page, so `make test`
asks them of the longest page of each kind and of each seventh of the others; `make soak` of all.
"""

import os
import re
from collections.abc import Iterable
from importlib.resources import files
from pathlib import Path
from typing import Any, Final

import pytest

from tests import built
from tests.browser.driven import Driven
from tests.conftest import Opener

pytestmark = pytest.mark.browser

PHONE_WIDTH = 320
TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]
AXE = (files("axe_playwright_python") / "axe.min.js").read_text(encoding="utf-8")
EVERY_PAGE: Final = "BASINSIDE_EVERY_PAGE"
"""The variable under which axe looks at all pages."""
EACH: Final = 7
BY_NIGHT: Final = ["color-contrast"]
"""What can differ by night, when only the colours do."""
RUN_AXE = "tags => axe.run(document, {runOnly: tags, resultTypes: ['violations'], preload: false})"
TOO_WIDE = """(width) => [...document.querySelectorAll('body *')]
  .filter((e) => e.getBoundingClientRect().right > width + 0.5)
  .slice(0, 3).map((e) => e.outerHTML.slice(0, 120))"""
STORE: Final = "store.html"
"""The frame that keeps drafts: nobody reads it."""
COUNTS: Final = """return [
  ...['main', 'h1'].map((name) => document.querySelectorAll(name).length),
  document.title.trim() !== '',
];"""
WHOLE: Final = [1, 1, True]
OPEN_ALL = "document.querySelectorAll('details').forEach((d) => { d.open = true; });"


def described(violations: list[dict[str, Any]]) -> list[str]:
    return [
        f"{violation['id']}: {node['html'][:160]}"
        for violation in violations
        for node in violation["nodes"]
    ]


def longest_of_each_kind(pages: Iterable[Path]) -> list[Path]:
    """Return the longest page of each template, which its body names."""
    longest: dict[str, Path] = {}
    for path in sorted(pages, key=lambda each: each.stat().st_size):
        kind = re.search('<body class="([^"]*)"', path.read_text(encoding="utf-8"))
        longest[kind[1] if kind else path.name] = path
    assert len(longest) > 20
    return list(longest.values())


def test_axe_and_the_ruler_notice_a_bad_page(tmp_path: Path, open_page: Opener) -> None:
    bad = tmp_path / "bad.html"
    bad.write_text(
        "<!doctype html><title>a</title>"
        "<body style='color-scheme:light dark;background:light-dark(#fff,#000)'>"
        "<img src=data:,><p style='color:#ddd'>pale words"
        "<p style='color:light-dark(#000,#222)'>dark words"
        "<p style='width:900px'>wide"
    )
    page = open_page(bad, size=(PHONE_WIDTH, 640))
    page.evaluate(AXE)
    found = {violation["id"] for violation in page.evaluate(RUN_AXE, TAGS)["violations"]}
    assert {"html-has-lang", "image-alt", "color-contrast"} <= found
    assert page.evaluate("() => document.scrollingElement.scrollWidth") > PHONE_WIDTH
    page.emulate_media(color_scheme="dark")
    (by_night,) = page.evaluate(RUN_AXE, BY_NIGHT)["violations"]
    assert "dark words" in described([by_night])[0]
    open_page.complaints.clear()


def sample(pages: list[Path]) -> list[Path]:
    """Return the pages that axe looks at: of each kind, and each seventh of the others."""
    if os.environ.get(EVERY_PAGE):
        return pages
    longest = longest_of_each_kind(pages)
    return [*longest, *sorted({*pages} - {*longest})[::EACH]]


def test_axe_finds_nothing(built_demo: Path, open_page: Opener) -> None:
    """By day and by night on one load; by night the longest of each kind."""
    wrong = {}
    every = built.pages(built_demo)
    night = longest_of_each_kind(every)
    page = open_page("index.html")
    for path in sample(every):
        page.emulate_media(color_scheme="light")
        page.goto(path.as_uri())
        page.evaluate(f"() => {{ {OPEN_ALL} }}")
        page.evaluate(AXE)
        found = described(page.evaluate(RUN_AXE, TAGS)["violations"])
        if path in night:
            page.emulate_media(color_scheme="dark")
            found += described(page.evaluate(RUN_AXE, BY_NIGHT)["violations"])
        if found:
            wrong[path.name] = found
    assert not wrong


def test_no_page_scrolls_sideways_at_320_px_or_lacks_its_heading(
    built_demo: Path, open_page: Opener
) -> None:
    wrong: dict[str, Any] = {}
    page = open_page("index.html", size=(PHONE_WIDTH, 640))
    for path in built.pages(built_demo):
        page.goto(path.as_uri())
        page.evaluate(f"() => {{ {OPEN_ALL} }}")
        width = page.evaluate("() => document.scrollingElement.scrollWidth")
        if width > PHONE_WIDTH:
            wrong[path.name] = [width, *page.evaluate(TOO_WIDE, PHONE_WIDTH)]
        if path.name != STORE and page.evaluate(f"() => {{ {COUNTS} }}") != WHOLE:
            wrong[f"{path.name}, its headings"] = page.evaluate(f"() => {{ {COUNTS} }}")
    assert not wrong


def test_pages_of_each_kind_have_their_main_part_and_heading_in_either_browser(
    built_demo: Path, any_browser: Driven
) -> None:
    wrong = {}
    for path in longest_of_each_kind(built.pages(built_demo)):
        if path.name != STORE:
            any_browser.go(path.as_uri())
            if any_browser.run(COUNTS) != WHOLE:
                wrong[path.name] = any_browser.run(COUNTS)
    assert not wrong
