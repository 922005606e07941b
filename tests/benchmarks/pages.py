"""Rows 5 to 7 of what is held: sizes of pages, the first question, the first thing found.

Times are taken in a Chromium whose processor is slowed six times, each in a new context, so that
nothing is kept from the run before. They end when the browser has drawn what they wait for.
"""

from __future__ import annotations

import json
import re
import tempfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from statistics import median
from typing import Any, Final

from playwright.sync_api import Browser, Page

from basinside.pipeline import build
from tests.benchmarks.synthetic import CHECKOUT, make_clinic
from tests.browser import chromium

KB: Final = 1_000
SLOWED: Final = 6
RUNS: Final = 5
PAGE_KB: Final = 150
SELF_TEST_KB: Final = 60
"""A self-test page may have this, and one kB more for each item."""
QUESTION_MS: Final = 400
INDEX_KB: Final = 400
FOUND_MS: Final = 150
QUESTIONS: Final = 300
ITEMS_A_PROCEDURE: Final = 10
PROCEDURES_FOR_SEARCH: Final = 160
"""Instruments, values, chemicals and choices make some 200 pages and more of it."""
TYPED: Final = "rinse the steam"
PICTURE: Final = re.compile(r"<svg.*?</svg>", re.DOTALL)
INLINE: Final = re.compile(
    r'<script type="application/json" id="self-test">(.*?)</script>', re.DOTALL
)

# Both tell the time at which the wanted thing was drawn: a frame, and a task behind it.
WATCH_QUESTION: Final = """
const seen = new MutationObserver(() => {
  if (!document.querySelector('.self-test form input:not([disabled])')) return;
  seen.disconnect();
  requestAnimationFrame(() => setTimeout(() => { globalThis.drawnAt = performance.now(); }));
});
seen.observe(document, {subtree: true, childList: true});
"""
WATCH_SEARCH: Final = """() => {
  let typed = 0;
  globalThis.tookMs = [];
  addEventListener('input', (event) => { typed = event.timeStamp; }, true);
  new MutationObserver(() => requestAnimationFrame(() => setTimeout(
    () => globalThis.tookMs.push(performance.now() - typed)
  ))).observe(document.querySelector('ol.results'), {childList: true});
}"""


def main() -> None:
    """Print the three rows."""
    with _built() as site:
        sizes(site)
    try:
        with chromium.launched() as browser:
            first_question(browser)
            first_found(browser)
    except FileNotFoundError as error:
        print(f"not measured in a browser: {error}")


def sizes(site: Path) -> None:
    """Print the largest page and every self-test page of a built folder."""
    print("\npages of the demo, raw")
    plain = {
        path.relative_to(site).as_posix(): PICTURE.sub("", path.read_text(encoding="utf-8"))
        for path in site.rglob("*.html")
    }
    largest = max(plain, key=lambda name: len(plain[name].encode()))
    _row(f"largest without pictures, {largest}", _kb(plain[largest]), PAGE_KB, "kB")
    for name in sorted(plain):
        found = INLINE.search(plain[name])
        if found:
            items = len(json.loads(found.group(1))["items"])
            _row(f"{name}, {items} items", _kb(plain[name]), SELF_TEST_KB + items, "kB")


def first_question(browser: Browser) -> None:
    """Print how long a self-test of many items takes until its first question can be answered."""
    count = QUESTIONS // ITEMS_A_PROCEDURE
    with _built(lambda folder: make_clinic(folder, count, procedures_a_topic=count)) as site:
        page = site / "self-tests" / "topic-0.html"
        found = INLINE.search(page.read_text(encoding="utf-8"))
        assert found is not None
        assert len(json.loads(found.group(1))["items"]) == QUESTIONS
        print(f"\n{QUESTIONS} items in one self-test, {SLOWED} times slowed")
        print(f"  the page: {_kb(page.read_text(encoding='utf-8')):.0f} kB")
        took = [_question_ms(browser, page) for _ in range(RUNS)]
        worked = [_worked_ms(browser, page) for _ in range(RUNS)]
    _times("from opening to the first question", took, QUESTION_MS)
    work = SLOWED * min(worked)
    print(f"  work of the page's own thread for it, {SLOWED} times: {work:.0f} ms")


def first_found(browser: Browser) -> None:
    """Print the size of a large search index, and how long its first result takes."""
    with _built(lambda folder: make_clinic(folder, PROCEDURES_FOR_SEARCH)) as site:
        index = site / "assets" / "search-index.js"
        took = [ms for _ in range(RUNS) for ms in _search_ms(browser, site / "search.html")]
        with _slowed(browser) as page:
            page.goto((site / "search.html").as_uri())
            pages = page.evaluate("() => Basinside.searchIndex.pages.length")
        print(f"\nsearch, {pages} pages, {SLOWED} times slowed")
        _row("the index", _kb(index.read_text(encoding="utf-8")), INDEX_KB, "kB")
    _times("from a key to the results", took, FOUND_MS)


def _question_ms(browser: Browser, path: Path) -> float:
    with _slowed(browser) as page:
        return _opened_ms(page, path)


def _worked_ms(browser: Browser, path: Path) -> float:
    """Return the milliseconds of work of the page's thread, with nothing slowed.

    They leave out what other programs of a busy machine took, and the drawing itself.
    """
    with _slowed(browser, 1) as page:
        session: Any = page.context.new_cdp_session(page)
        session.send("Performance.enable", {"timeDomain": "threadTicks"})
        _opened_ms(page, path)
        metrics = session.send("Performance.getMetrics")["metrics"]
        return 1_000 * next(each["value"] for each in metrics if each["name"] == "TaskDuration")


def _opened_ms(page: Page, path: Path) -> float:
    """Open a self-test; return the milliseconds until its first question was drawn."""
    page.add_init_script(WATCH_QUESTION)
    page.goto(path.as_uri())
    page.wait_for_function("() => globalThis.drawnAt")
    return float(page.evaluate("() => globalThis.drawnAt"))


def _search_ms(browser: Browser, path: Path) -> list[float]:
    """Return the milliseconds of each key of some words, typed one after the other."""
    with _slowed(browser) as page:
        page.goto(path.as_uri())
        page.evaluate(WATCH_SEARCH)
        for count, key in enumerate(TYPED, start=1):
            page.keyboard.type(key)
            page.wait_for_function("(count) => globalThis.tookMs.length >= count", arg=count)
        took: list[float] = page.evaluate("() => globalThis.tookMs")
        assert page.locator("ol.results > li").count() > 0
        return took


@contextmanager
def _slowed(browser: Browser, times: int = SLOWED) -> Iterator[Page]:
    with browser.new_context() as context:
        page = context.new_page()
        session: Any = context.new_cdp_session(page)
        session.send("Emulation.setCPUThrottlingRate", {"rate": times})
        yield page


@contextmanager
def _built(make: Callable[[Path], None] | None = None) -> Iterator[Path]:
    """Build the demo, or a clinic that `make` writes; give the folder and remove it."""
    with tempfile.TemporaryDirectory() as folder:
        root, site = CHECKOUT, Path(folder) / "site"
        if make is not None:
            root = Path(folder) / "clinic"
            root.mkdir()
            make(root)
        for path, text in build.handbook_files(build.read_clinic(root), build.open_theme()):
            build.write_made(site / path, text().encode())
        yield site


def _kb(text: str) -> float:
    return len(text.encode()) / KB


def _row(what: str, value: float, held: float, unit: str) -> None:
    print(f"  {what}: {value:.0f} {unit} (held: {held:.0f} {unit})")


def _times(what: str, took: list[float], held: float) -> None:
    _row(f"{what}, median of {len(took)}", median(took), held, "ms")
    print(f"  the slowest of them: {max(took):.0f} ms")


if __name__ == "__main__":
    main()
