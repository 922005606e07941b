"""One small way to drive either browser, for the tests that run in both."""

from typing import Any, Protocol

from playwright.sync_api import Page

WRAPPER = "async (args) => {%s}"


class Driven(Protocol):
    """A browser with one page: `tests.browser.firefox.Firefox` is one, `InChromium` the other."""

    def go(self, url: str) -> None:
        """Open a page and wait until it is loaded."""

    def run(self, body: str, *args: Any) -> Any:
        """Run the body of an async function of `args` in the page; its value must be JSON."""


class InChromium:
    """A page of Playwright's behind the same two verbs."""

    def __init__(self, page: Page) -> None:
        self.page = page

    def go(self, url: str) -> None:
        self.page.goto(url)

    def run(self, body: str, *args: Any) -> Any:
        return self.page.evaluate(WRAPPER % body, list(args))
