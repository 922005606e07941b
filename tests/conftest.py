"""What any test may ask for: the built demo handbook, a page opened from it, either browser."""

import os
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from hypothesis import settings
from playwright.sync_api import Browser, BrowserContext, Page

from tests import built
from tests.browser import chromium, firefox
from tests.browser.driven import Driven, InChromium

# No deadline: a shared machine is at times slow. `make soak` looks for longer.
settings.register_profile("house", deadline=None)
settings.register_profile("soak", deadline=None, max_examples=20_000)
settings.load_profile("house")

LAPTOP = (1280, 800)
BROWSERS_ASKED = "any_browser"


def pytest_report_header() -> list[str]:
    """Say which browsers the run has."""
    here = {"Chromium": chromium.find(), "Firefox": firefox.find()}
    return [f"{name}: {path or 'none found'}" for name, path in here.items()]


def pytest_generate_tests(metafunc: pytest.Metafunc) -> None:
    """Run a test of `any_browser` in Chromium always, in Firefox wherever there is one."""
    if BROWSERS_ASKED not in metafunc.fixturenames:
        return
    names = ["chromium"]
    if firefox.find() or os.environ.get("BASINSIDE_NEED_FIREFOX"):
        names.append("firefox")
    metafunc.parametrize(BROWSERS_ASKED, names, indirect=True, scope="session")


@pytest.fixture(scope="session")
def built_demo(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of the built demo handbook; not to be changed.

    BASINSIDE_SITE names a folder that is built already, to look into one more quickly.
    """
    ready = os.environ.get("BASINSIDE_SITE")
    if ready:
        return Path(ready).resolve()
    own = tmp_path_factory.getbasetemp()
    return built.build_once(own.parent if "PYTEST_XDIST_WORKER" in os.environ else own)


@pytest.fixture(scope="session")
def chromium_browser() -> Iterator[Browser]:
    """One Chromium for the worker."""
    with chromium.launched() as browser:
        yield browser


class Opener:
    """Opens pages from disk, each in a context of its own, and notes what they complain of."""

    def __init__(self, browser: Browser, folder: Callable[[], Path]) -> None:
        self._browser = browser
        self._folder = folder
        self._contexts: list[BrowserContext] = []
        self.complaints: list[str] = []

    def __call__(self, page: str | Path, size: tuple[int, int] = LAPTOP) -> Page:
        """Open a page, by its path in the demo handbook or by a whole path, at a window size."""
        context = self._browser.new_context(
            viewport={"width": size[0], "height": size[1]}, accept_downloads=True
        )
        self._contexts.append(context)
        opened = context.new_page()
        opened.on("pageerror", lambda error: self.complaints.append(f"{page}: {error}"))
        opened.on(
            "console",
            lambda said: (
                self.complaints.append(f"{page}: {said.text}") if said.type == "error" else None
            ),
        )
        place, _, fragment = str(page).partition("#")
        path = Path(place)
        address = (path if path.is_absolute() else self._folder() / path).as_uri()
        opened.goto(f"{address}#{fragment}" if fragment else address)
        return opened

    def close(self) -> None:
        for context in self._contexts:
            context.close()


@pytest.fixture
def open_page(chromium_browser: Browser, request: pytest.FixtureRequest) -> Iterator[Opener]:
    """An `Opener`. The test fails if a page logged an error or broke the content policy;

    one that expects complaints reads `open_page.complaints` and clears it.
    """

    def folder() -> Path:
        demo: Path = request.getfixturevalue("built_demo")
        return demo

    opener = Opener(chromium_browser, folder)
    yield opener
    opener.close()
    assert not opener.complaints


@pytest.fixture(scope="session")
def firefox_browser() -> Iterator[firefox.Firefox]:
    """One Firefox for the worker."""
    program = firefox.find()
    if program is None:
        raise FileNotFoundError("BASINSIDE_NEED_FIREFOX is set, and no Firefox was found")
    with firefox.launched(program) as browser:
        yield browser


@pytest.fixture(scope="session")
def any_browser(request: pytest.FixtureRequest) -> Iterator[Driven]:
    """Chromium or Firefox behind the two verbs of `Driven`."""
    if request.param == "firefox":
        yield request.getfixturevalue("firefox_browser")
        return
    browser: Browser = request.getfixturevalue("chromium_browser")
    with browser.new_context() as context:
        yield InChromium(context.new_page())
