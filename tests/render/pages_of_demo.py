"""The pages of the demonstration handbook, made once a test run, and how they are read."""

import re
from functools import cache
from html import unescape

from basinside.model.content import Content
from basinside.pipeline.build import Clinic, handbook_files, open_theme, read_clinic
from tests.built import CHECKOUT

STORE = "store.html"  # a frame that nobody reads


@cache
def demo() -> Clinic:
    return read_clinic(CHECKOUT)


@cache
def pages() -> dict[str, str]:
    """Return every page that somebody reads, by path; not to be changed."""
    made = handbook_files(demo(), open_theme())
    return {path: make() for path, make in made if path.endswith(".html") and path != STORE}


def words(markup: str) -> str:
    """Return what a reader sees of markup, spaces made one."""
    seen = re.sub(r"<(script|svg)\b.*?</\1>", " ", markup, flags=re.DOTALL)
    text = unescape(re.sub(r"<[^>]+>", " ", seen)).replace("\N{NO-BREAK SPACE}", " ")
    return re.sub(r" (?=[.,;:])", "", re.sub(r"\s+", " ", text))


def part_of(page: str, begin: str, end: str) -> str:
    """Return the markup of a page from one mark to the next of another."""
    start = page.index(begin)
    return page[start : page.index(end, start)]


def content() -> Content:
    return demo().content
