"""Find a Chromium and start it for reading pages from disk."""

import os
import shutil
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from pathlib import Path

from playwright.sync_api import Browser, Playwright, sync_playwright

NAMES = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable")

FLAGS = (
    "--disable-dev-shm-usage",  # containers give /dev/shm little room
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-domain-reliability",
    "--disable-sync",
    "--no-first-run",
    "--no-default-browser-check",
    "--force-color-profile=srgb",  # the same colours on every machine
    "--font-render-hinting=none",
)


def find(environ: Mapping[str, str] = os.environ) -> Path | None:
    """Return the Chromium to use: the one named in BASINSIDE_CHROMIUM, else one on PATH."""
    named = environ.get("BASINSIDE_CHROMIUM", "")
    if named:
        return Path(named) if Path(named).is_file() else None
    for name in NAMES:
        found = shutil.which(name, path=environ.get("PATH"))
        if found:
            return Path(found)
    return None


def find_with(playwright: Playwright) -> Path | None:
    """Like `find`, and last the Chromium that Playwright itself installed."""
    found = find()
    if found is None and not os.environ.get("BASINSIDE_CHROMIUM"):
        own = Path(playwright.chromium.executable_path)
        found = own if own.is_file() else None
    return found


def flags(more: Sequence[str] = ()) -> list[str]:
    """Return how a Chromium is started here."""
    as_root = hasattr(os, "geteuid") and os.geteuid() == 0
    # Chromium refuses its sandbox to root.
    return [*FLAGS, *more, *(["--no-sandbox"] if as_root else [])]


@contextmanager
def launched(more_flags: Sequence[str] = ()) -> Iterator[Browser]:
    """Start a headless Chromium and close it at the end.

    Raises FileNotFoundError where there is none: a browser test never passes by not running.
    """
    with sync_playwright() as playwright:
        program = find_with(playwright)
        if program is None:
            raise FileNotFoundError(
                "no Chromium found: `make test` gets one, or name yours in BASINSIDE_CHROMIUM"
            )
        browser = playwright.chromium.launch(executable_path=program, args=flags(more_flags))
        try:
            yield browser
        finally:
            browser.close()
