"""Nothing leaves: reading the whole handbook, and even a hostile script on one of its pages.

Chromium is told that a listener on loopback is its proxy for every host, loopback included: a
request to anywhere arrives there.
"""

import shutil
import time
from html import escape
from pathlib import Path

import pytest
from playwright.sync_api import Browser, ProxySettings

from tests import built
from tests.browser import parsed
from tests.browser.driven import Driven
from tests.browser.listener import Listener, listening

pytestmark = pytest.mark.browser

HERE = Path(__file__).parent
QUIET_SECONDS = 1.5
WAYS_THAT_ARRIVE = 18  # measured without a policy: 21 of 22 in Chromium 156, 20 in Firefox 153
STIR = """for (const d of document.querySelectorAll('details')) d.open = true;
window.scrollTo(0, document.body.scrollHeight);
for (const b of document.querySelectorAll('main button')) b.focus();"""


def walk(browser: Browser, listener: Listener, paths: list[Path]) -> list[str]:
    """Read pages with the listener as proxy; return the requests that were for some host."""
    proxy: ProxySettings = {"server": f"127.0.0.1:{listener.port}", "bypass": "<-loopback>"}
    asked: list[str] = []
    with browser.new_context(proxy=proxy) as context:
        context.on("request", lambda request: asked.append(request.url))
        page = context.new_page()
        for path in paths:
            page.goto(path.as_uri())
            page.evaluate(f"() => {{ {STIR} }}")
        time.sleep(QUIET_SECONDS)
    return [url for url in asked if not url.startswith(("file:", "data:", "blob:"))]


def test_reading_every_page_sends_nothing(built_demo: Path, chromium_browser: Browser) -> None:
    with listening() as listener:
        assert walk(chromium_browser, listener, built.pages(built_demo)) == []
        assert listener.heard == []


def test_the_walk_notices_a_page_that_loads_from_a_host(
    tmp_path: Path, chromium_browser: Browser
) -> None:
    leaking = tmp_path / "leaking.html"
    leaking.write_text("<!doctype html><title>a</title><img src='http://elsewhere.test/dot.png'>")
    with listening() as listener:
        assert walk(chromium_browser, listener, [leaking]) == ["http://elsewhere.test/dot.png"]
        assert [line for line in listener.heard if "elsewhere.test" in line]


def hostile_page(folder: Path, host: str, policy: str) -> Path:
    """Write a page that runs attack.js under a content policy."""
    shutil.copy(HERE / "attack.js", folder)
    meta = f'<meta http-equiv="Content-Security-Policy" content="{escape(policy)}">'
    page = folder / "hostile.html"
    page.write_text(
        f'<!doctype html><html lang="en" data-host="{host}"><head><meta charset="utf-8">'
        f"{meta if policy else ''}<title>a</title></head>"
        '<body><script src="attack.js"></script></body></html>',
        encoding="utf-8",
    )
    return page


def arrivals(browser: Driven, listener: Listener, page: Path, wanted: int) -> int:
    """Open the hostile page; return how many requests arrived, waiting for those wanted."""
    browser.go(page.as_uri())
    assert int(browser.run("return document.documentElement.dataset.tried;")) > wanted
    end = time.monotonic() + 10
    while wanted and len(listener.heard) < wanted and time.monotonic() < end:
        time.sleep(0.05)
    time.sleep(QUIET_SECONDS)
    return len(listener.heard)


def test_without_the_policy_a_hostile_script_gets_out(tmp_path: Path, any_browser: Driven) -> None:
    with listening() as listener:
        page = hostile_page(tmp_path, f"127.0.0.1:{listener.port}", "")
        assert arrivals(any_browser, listener, page, WAYS_THAT_ARRIVE) >= WAYS_THAT_ARRIVE


def test_under_the_policy_of_our_pages_it_does_not(
    tmp_path: Path, any_browser: Driven, built_demo: Path
) -> None:
    policies = {
        "; ".join(f"{name} {' '.join(sorted(sources))}" for name, sources in policy.items())
        for policy in (parsed.policy(parsed.parse(page)) for page in built.pages(built_demo))
    }
    assert "" not in policies
    for policy in policies:
        with listening() as listener:
            page = hostile_page(tmp_path, f"127.0.0.1:{listener.port}", policy)
            assert arrivals(any_browser, listener, page, 0) == 0, listener.heard
