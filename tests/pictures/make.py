"""Make the README's pictures from the real pages: ``make pictures``.

A procedure on a phone (390 x 844 px at double density), the start on a laptop (1280 x 800 px), and
the first sheet of a print (A4) where pdftoppm is installed.
"""

import shutil
import subprocess
import sys
import tempfile
from dataclasses import dataclass
from pathlib import Path

from playwright.sync_api import Browser, ViewportSize

CHECKOUT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(CHECKOUT))

from tests import built  # noqa: E402  (the checkout is put on the path just above)
from tests.browser import chromium  # noqa: E402

OUT = Path(__file__).parent
PAPER_DOTS_PER_INCH = 90


@dataclass(frozen=True, kw_only=True)
class Size:
    """A window: its size in CSS pixels and how many dots each has."""

    name: str
    width: int
    height: int
    density: float = 1


PHONE = Size(name="phone", width=390, height=844, density=2)
LAPTOP = Size(name="laptop", width=1280, height=800)

SHOTS = (
    ("start", "index.html", LAPTOP),
    ("procedure", "procedures/bag-mask-silicone-boil.html", PHONE),
)
NOTE = '[data-component="capability"] button'
"""Closes the note that a first visit shows."""
SHEETS = "print/*.html"


def photograph(browser: Browser, site: Path, name: str, page: str, size: Size) -> Path:
    """Write what the first screen of a page shows."""
    target = OUT / f"{name}-{size.name}.png"
    viewport: ViewportSize = {"width": size.width, "height": size.height}
    with browser.new_context(viewport=viewport, device_scale_factor=size.density) as context:
        opened = context.new_page()
        opened.goto((site / page).as_uri())
        for close in opened.locator(NOTE).all():
            close.click()
        opened.screenshot(path=target)
    return target


def print_first_sheet(browser: Browser, site: Path) -> Path | None:
    """Write the first A4 page of the first print; None where pdftoppm is missing."""
    pdftoppm = shutil.which("pdftoppm")
    if pdftoppm is None:
        return None
    sheet = min(site.glob(SHEETS))
    with tempfile.TemporaryDirectory() as folder, browser.new_context() as context:
        paper = Path(folder) / "sheet.pdf"
        opened = context.new_page()
        opened.goto(sheet.as_uri())
        opened.pdf(path=paper, format="A4", prefer_css_page_size=True)
        options = ["-png", "-singlefile", "-r", str(PAPER_DOTS_PER_INCH)]
        subprocess.run([pdftoppm, *options, paper, OUT / "sheet-paper"], check=True)
    return OUT / "sheet-paper.png"


def main(arguments: list[str]) -> int:
    """Photograph the folder named, or a handbook built for it."""
    with tempfile.TemporaryDirectory() as folder, chromium.launched() as browser:
        if arguments:
            site = Path(arguments[0]).resolve()
        else:
            site = Path(folder) / "site"
            built.build(site)
        made: list[Path | None] = [photograph(browser, site, *shot) for shot in SHOTS]
        made.append(print_first_sheet(browser, site))
    for picture in made:
        print(picture or "no pdftoppm: the paper picture is left as it was")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
