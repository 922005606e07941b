"""The page's side of searching: what a word finds, and in which order."""

import json
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page as Opened
from playwright.sync_api import expect

from basinside.render.search_index import Entry, Page, folded, search_index
from tests.browser import script_lab
from tests.conftest import Opener

pytestmark = pytest.mark.browser

BOIL = Page(href="boil.html", name="Bag-mask: boiling", kind="Procedure")
STEAM = Page(href="steam.html", name="Speculum: steam", kind="Procedure")
WORDS = Page(href="words.html", name="Words", kind="Reference")
INDEX = search_index(
    [
        Entry(page=BOIL, title=BOIL.name),
        Entry(page=BOIL, title="Rinse each part.", text="Soap uses up chlorine.", anchor="rinse"),
        Entry(page=BOIL, title="Put on gloves.", text="Rinse them first.", anchor="gloves"),
        Entry(page=STEAM, title=STEAM.name),
        Entry(page=STEAM, title="Rinse each part.", text="Soap uses up chlorine.", anchor="rinse"),
        Entry(page=STEAM, title="Fill the steam vessel.", text="Émail, 0.5 %", anchor="fill"),
        Entry(page=WORDS, title="Steam sterilizer", text="A closed vessel.", anchor="sterilizer"),
    ],
    [("steam sterilizer", "autoclave", "steam vessel")],
)
FIND = """([index, query]) => Basinside.search.find(index, query)
  .map(each => [index.pages[each.page][0], ...each.hits.map(hit => hit.anchor)])"""


@pytest.fixture
def lab(open_page: Opener, tmp_path: Path) -> Opened:
    folder = script_lab.lay(tmp_path / "lab", {"a.html": ("", {})})
    return open_page(folder / "a.html")


def find(lab: Opened, query: str) -> list[list[str]]:
    found: list[list[str]] = lab.evaluate(FIND, [INDEX, query])
    return found


@pytest.mark.parametrize(
    ("query", "found"),
    [
        ("rins", [["boil.html", "rinse", "gloves"], ["steam.html", "rinse"]]),
        ("RINSE speculum", [["steam.html", "rinse"]]),
        ("glove", [["boil.html", "gloves"]]),
        ("soaps", [["boil.html", "rinse"], ["steam.html", "rinse"]]),
        ("email", [["steam.html", "fill"]]),
        ("0.5", [["steam.html", "fill"]]),
        ("autoclave", [["words.html", "sterilizer"], ["steam.html", "fill"]]),
        ("fill autoclave", [["steam.html", "fill"]]),
        ("boiling", [["boil.html"]]),
        ("zebra here", []),
        # Nothing has all three: what has two of them is shown.
        ("rinse speculum zebra", [["steam.html", "rinse"]]),
        ("zebra", []),
        ("", []),
        ("   %", []),
    ],
)
def test_what_a_query_finds(lab: Opened, query: str, found: list[list[str]]) -> None:
    assert sorted(find(lab, query)) == sorted(found)


def test_a_whole_word_of_a_title_comes_before_a_beginning_in_a_text(lab: Opened) -> None:
    index = search_index(
        [
            Entry(page=BOIL, title="Look", text="The washing is over.", anchor="a"),
            Entry(page=STEAM, title="Wash", anchor="b"),
        ],
        (),
    )
    found = lab.evaluate(FIND, [index, "wash"])
    assert [each[0] for each in found] == ["steam.html", "boil.html"]


def test_both_sides_fold_words_alike(lab: Opened) -> None:
    texts = [
        "Émail 0.5 % at 121 °C", "STRASSE straße", "1,000 parts; 2.5.1", "naïve_word x-y",
        "Ødegård İstanbul", "½ ﬁre ①", "рука १२३ 手", "a\u0301 e\u0300", "..5 5.", "٣٫٥", "ﷺ",
    ]  # fmt: skip
    assert lab.evaluate("all => all.map(Basinside.search.folded)", texts) == [
        folded(each) for each in texts
    ]


def test_the_page_shows_places_and_says_how_many(open_page: Opener, tmp_path: Path) -> None:
    box = '<div data-component="search"><p>no script</p></div>'
    folder = script_lab.lay(tmp_path / "lab", {"search.html": (box, {})})
    data: Any = json.dumps(INDEX)
    index = folder / "basinside.js"
    index.write_text(
        index.read_text(encoding="utf-8") + f"\nBasinside.searchIndex = {data};\n",
        encoding="utf-8",
    )
    page = open_page(folder / "search.html#q=gloves")
    expect(page.get_by_role("status")).to_have_text("Found on one page.")
    expect(page.get_by_role("link", name="Put on gloves.")).to_have_attribute(
        "href", "boil.html#gloves"
    )
    page.get_by_role("searchbox").fill("zzz")
    expect(page.get_by_role("status")).to_contain_text("zzz")
    page.get_by_role("searchbox").fill("rinse")
    expect(page.get_by_role("status")).to_have_text("Found on 2 pages.")
    assert page.evaluate("location.hash") == "#q=rinse"
    page.reload()
    expect(page.get_by_role("searchbox")).to_have_value("rinse")
