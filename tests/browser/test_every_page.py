"""What every page of the built demo handbook must do in a browser."""

import re
from collections.abc import Iterable
from importlib.resources import files
from pathlib import Path
from typing import Any

import pytest

from tests import built
from tests.browser.driven import Driven
from tests.conftest import Opener

pytestmark = pytest.mark.browser

PHONE_WIDTH = 320
TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]
AXE = (files("axe_playwright_python") / "axe.min.js").read_text(encoding="utf-8")
RUN_AXE = "tags => axe.run(document, {runOnly: tags, resultTypes: ['violations'], preload: false})"
TOO_WIDE = """(width) => [...document.querySelectorAll('body *')]
  .filter((e) => e.getBoundingClientRect().right > width + 0.5)
  .slice(0, 3).map((e) => e.outerHTML.slice(0, 120))"""
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
        "<!doctype html><title>a</title><img src=data:,><p style='color:#ddd'>pale words"
        "<p style='width:900px'>wide"
    )
    page = open_page(bad, size=(PHONE_WIDTH, 640))
    page.evaluate(AXE)
    found = {violation["id"] for violation in page.evaluate(RUN_AXE, TAGS)["violations"]}
    assert {"html-has-lang", "image-alt", "color-contrast"} <= found
    assert page.evaluate("() => document.scrollingElement.scrollWidth") > PHONE_WIDTH
    open_page.complaints.clear()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing(built_demo: Path, open_page: Opener, scheme: Any) -> None:
    """By day every page; by night, when only the colours differ, the longest of each kind."""
    wrong = {}
    every = built.pages(built_demo)
    page = open_page("index.html")
    page.emulate_media(color_scheme=scheme)
    for path in every if scheme == "light" else longest_of_each_kind(every):
        page.goto(path.as_uri())
        page.evaluate(f"() => {{ {OPEN_ALL} }}")
        page.evaluate(AXE)
        found = described(page.evaluate(RUN_AXE, TAGS)["violations"])
        if found:
            wrong[path.name] = found
    assert not wrong


def test_no_page_scrolls_sideways_at_320_px(built_demo: Path, open_page: Opener) -> None:
    wrong = {}
    page = open_page("index.html", size=(PHONE_WIDTH, 640))
    for path in built.pages(built_demo):
        page.goto(path.as_uri())
        page.evaluate(f"() => {{ {OPEN_ALL} }}")
        width = page.evaluate("() => document.scrollingElement.scrollWidth")
        if width > PHONE_WIDTH:
            wrong[path.name] = [width, *page.evaluate(TOO_WIDE, PHONE_WIDTH)]
    assert not wrong


def test_every_page_has_its_main_part_and_one_heading(
    built_demo: Path, any_browser: Driven
) -> None:
    wrong = {}
    for path in built.pages(built_demo):
        if path.name == "store.html":
            continue  # the frame that keeps drafts: nobody reads it
        any_browser.go(path.as_uri())
        counts = any_browser.run(
            "return ['main', 'h1'].map((name) => document.querySelectorAll(name).length);"
        )
        if counts != [1, 1] or not any_browser.run("return document.title.trim() !== '';"):
            wrong[path.name] = counts
    assert not wrong
