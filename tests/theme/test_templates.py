"""What holds for the theme's files as they are written: no words, no inline style or script."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from basinside.render import view_types

THEME = Path(__file__).parents[2] / "site_theme"
MARKUP = sorted([*THEME.glob("templates/*.html"), *THEME.glob("components/*/macro.html")])
STYLES = sorted(THEME.rglob("*.css"))
ATTRIBUTES_OF_WORDS = re.compile(r'\s(?:aria-label|alt|title|placeholder)="(?!\{\{)[^"]')


def without_code(text: str) -> str:
    """Return a template's own text: no expressions, statements, comments or tags."""
    text = re.sub(r"\{#.*?#\}|\{%.*?%\}|\{\{.*?\}\}", "", text, flags=re.DOTALL)
    return re.sub(r"<[^>]*>", "", text)


@pytest.mark.parametrize("path", MARKUP, ids=lambda path: str(path.relative_to(THEME)))
def test_markup_holds_no_words_and_nothing_inline(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    left = without_code(re.sub(r"\{%-? *block kind.*?endblock *-?%\}", "", text))
    assert re.findall(r"[^\W\d_]+", left) == []
    assert not ATTRIBUTES_OF_WORDS.search(text)
    assert not re.search(r"\sstyle=|<style|\son[a-z]+=|javascript:|https?:|\|\s*safe", text)
    for script in re.findall(r"<script\b[^>]*>", text):
        assert "src=" in script or 'type="application/json"' in script


@pytest.mark.parametrize("path", STYLES, ids=lambda path: str(path.relative_to(THEME)))
def test_styles_say_no_words_load_nothing_and_name_no_colour(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    assert not re.search(r"url\(|@import", text)
    assert re.findall(r'content:\s*"[^"]*[^\W\d_][^"]*"', text) == []
    if path.name not in {"tokens.css", "print.css"}:
        screen = text.partition("@media print")[0]
        assert re.findall(r"#[0-9a-fA-F]{3,8}\b|\brgb|\bhsl", screen) == []


def test_the_order_names_every_style_once() -> None:
    lines = (THEME / "css" / "order.txt").read_text(encoding="utf-8").split()
    listed = [path for line in lines for path in sorted(THEME.glob(line))]
    assert sorted(listed) == STYLES


def test_every_page_view_has_its_template_and_every_template_a_view() -> None:
    named = {THEME / each for each in view_types.PAGE_TEMPLATES.values()}
    pages = {path for path in MARKUP if path.parent.name == "templates"}
    assert pages - named == {
        THEME / "templates" / "layout.html",
        THEME / "templates" / "paper.html",
        THEME / "templates" / "store.html",
    }
    assert named <= pages
