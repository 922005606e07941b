"""Paper as a browser sets it: with the one font that the tests pin, on sheets of A4 and Letter."""

import base64
import re
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from playwright.sync_api import Browser, Page

from tests.browser import chromium

FONTS = """<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
{folders}
<cachedir>{cache}</cachedir>
<match target="pattern"><edit name="family" mode="assign" binding="strong">
<string>DejaVu Sans</string></edit></match>
</fontconfig>
"""
FOLDERS = ("/usr/share/fonts/truetype/dejavu", "/usr/share/fonts/dejavu-sans-fonts")
PAPERS = ("A4", "Letter")
SHARED_WIDTH_PX = round(194 / 25.4 * 96)
"""The width that A4 and Letter share inside our margins, in CSS pixels."""

SHARED_HEIGHT_MM = 265

BOXES = """() => [...document.querySelectorAll(
    '.print-sheet, .sheet-title, .sheet-lead, .wall-chart, .chart-column, .chart-stage,'
    + ' .chart-steps li, .card-block, .card-table td, .exposure-one, .solution-labels > li,'
    + ' .log th, .tally-boxes, .sheet-foot')].map((each) => {
  const box = each.getBoundingClientRect();
  return [each.className || each.localName, box.x, box.y, box.width, box.height]
    .map((value) => (typeof value === 'number' ? Math.round(value * 10) / 10 : value));
})"""


@contextmanager
def pinned(folder: Path, beside: Browser) -> Iterator[Browser]:
    """Start a Chromium that knows DejaVu Sans and no other font; raise where it is missing.

    It is started beside one that runs: a process drives its browsers from one place.
    """
    there = [each for each in FOLDERS if Path(each, "DejaVuSansCondensed.ttf").is_file()]
    if not there:
        raise FileNotFoundError("DejaVu Sans is missing: install fonts-dejavu-extra")
    config = folder / "fonts.conf"
    dirs = "".join(f"<dir>{each}</dir>" for each in there)
    config.write_text(FONTS.format(folders=dirs, cache=folder / "cache"), encoding="utf-8")
    kind = beside.browser_type
    browser = kind.launch(
        executable_path=chromium.find() or kind.executable_path,
        args=chromium.flags(["--disable-lcd-text"]),
        env={"FONTCONFIG_FILE": str(config), "HOME": str(folder), "PATH": "/usr/bin:/bin"},
    )
    try:
        yield browser
    finally:
        browser.close()


def sheets(page: Page, paper: str) -> int:
    """Return on how many sheets a page is printed."""
    return len(re.findall(rb"/Type\s*/Page\b", page.pdf(format=paper)))


def over(page: Page) -> list[str]:
    """Return by how much a sheet is too wide or too tall for what A4 and Letter share.

    A browser makes everything smaller when something is too wide: the count of sheets hides that.
    """
    wide, tall = page.evaluate(
        "() => [document.scrollingElement.scrollWidth,"
        " document.querySelector('.print-sheet').getBoundingClientRect().height * 25.4 / 96]"
    )
    said = [f"{wide} px wide"] if wide > SHARED_WIDTH_PX else []
    return [*said, *([f"{tall:.1f} mm tall"] if tall > SHARED_HEIGHT_MM else [])]


def as_paper(browser: Browser, address: str) -> Page:
    """Open a page as it is printed, as wide as what A4 and Letter share."""
    page = browser.new_page(viewport={"width": SHARED_WIDTH_PX, "height": 1000})
    page.emulate_media(media="print")
    page.goto(address)
    return page


def boxes(page: Page) -> list[list[Any]]:
    """Return name, place and size of each text box of a sheet, in CSS pixels."""
    found: list[list[Any]] = page.evaluate(BOXES)
    return found


SHRINK = """async (source) => {
  const [width, height] = [190, 260];
  const picture = new Image();
  picture.src = source;
  await picture.decode();
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [width, height];
  const pen = canvas.getContext('2d');
  pen.fillStyle = 'white';
  pen.fillRect(0, 0, width, height);
  pen.imageSmoothingQuality = 'high';
  pen.drawImage(picture, 0, 0, width, picture.height * (width / picture.width));
  const dots = pen.getImageData(0, 0, width, height).data;
  const greys = [];
  for (let at = 0; at < dots.length; at += 4) {
    greys.push(Math.round((dots[at] + dots[at + 1] + dots[at + 2]) / 3));
  }
  return {greys, png: canvas.toDataURL('image/png')};
}"""

COLOUR = """async (source) => {
  const picture = new Image();
  picture.src = source;
  await picture.decode();
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [picture.width, picture.height];
  const pen = canvas.getContext('2d');
  pen.drawImage(picture, 0, 0);
  const dots = pen.getImageData(0, 0, canvas.width, canvas.height).data;
  let most = 0;
  for (let at = 0; at < dots.length; at += 4) {
    most = Math.max(most, Math.abs(dots[at] - dots[at + 1]), Math.abs(dots[at + 1] - dots[at + 2]));
  }
  return most;
}"""


def shrunk(page: Page, picture: bytes) -> tuple[list[int], bytes]:
    """Return a picture of a sheet as a small one: its greys, dot by dot, and the file."""
    found = page.evaluate(SHRINK, _source(picture))
    return found["greys"], base64.b64decode(found["png"].partition(",")[2])


def most_colour(page: Page, picture: bytes) -> int:
    """Return how far from grey the most coloured dot of a picture is, of 255."""
    most: int = page.evaluate(COLOUR, _source(picture))
    return most


def _source(picture: bytes) -> str:
    return f"data:image/png;base64,{base64.b64encode(picture).decode()}"
