"""A small folder of pages with the theme's real scripts and sheets, for tests of scripts alone.

The pages are our own few lines of HTML under the real content policy, so that a test of a script
does not wait for a whole handbook and fails for the script's reasons only.
"""

import fnmatch
import html
import json
from pathlib import Path
from typing import Any

from basinside.render.environment import joined_script
from basinside.render.views.chrome import POLICY
from basinside.render.views.phrases import PHRASES, page_phrases
from tests.built import CHECKOUT

THEME = CHECKOUT / "site_theme"
PAGE = {
    "handbook": "highfell",
    "edition": "2026.2",
    "language": "en",
    "store": "store.html",
    "dated": [],
}


def script(order_file: str = "order.txt") -> str:
    """Return the scripts of an order file, joined."""
    names = (THEME / "js" / order_file).read_text(encoding="utf-8").split()
    return joined_script((THEME / "js" / name).read_text(encoding="utf-8") for name in names)


def sheet() -> str:
    """Return the theme's style sheets, joined in their order."""
    names = sorted(path.relative_to(THEME).as_posix() for path in THEME.rglob("*.css"))
    patterns = (THEME / "css" / "order.txt").read_text(encoding="utf-8").split()
    kept = [name for pattern in patterns for name in fnmatch.filter(names, pattern)]
    return "\n".join((THEME / name).read_text(encoding="utf-8") for name in kept)


def phrases() -> dict[str, str]:
    """Return every phrase that pages bring for scripts, by its key."""
    known: dict[str, str] = page_phrases(*PHRASES)["phrases"]
    return known


def page(body: str, data: dict[str, Any], *, bundle: str = "basinside.js") -> str:
    """Return a page under the real content policy, with inline JSON by element id."""
    inline = "".join(
        f'<script type="application/json" id="{html.escape(name)}">'
        + json.dumps(value, ensure_ascii=False).replace("<", "\\u003c")
        + "</script>\n"
        for name, value in data.items()
    )
    return (
        '<!doctype html>\n<html lang="en"><head><meta charset="utf-8">'
        f'<meta http-equiv="Content-Security-Policy" content="{POLICY}">'
        '<meta name="viewport" content="width=device-width, initial-scale=1">'
        f'<title>a page</title><link rel="stylesheet" href="basinside.css">'
        f'<script src="{bundle}" defer></script></head><body><div class="sheet">\n'
        f'<main id="main" tabindex="-1"><h1>A page</h1>{body}</main></div>\n'
        f"{inline}</body></html>\n"
    )


def lay(folder: Path, pages: dict[str, tuple[str, dict[str, Any]]], *, store: bool = True) -> Path:
    """Write a folder: scripts, sheets, the store frame and pages as (body, inline JSON)."""
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "basinside.js").write_text(script(), encoding="utf-8")
    (folder / "basinside.css").write_text(sheet(), encoding="utf-8")
    (folder / "store.js").write_text(script("store_order.txt"), encoding="utf-8")
    if store:
        (folder / "store.html").write_text(page("", {}, bundle="store.js"), encoding="utf-8")
    for name, (body, data) in pages.items():
        whole = {"page": PAGE, "phrases": phrases(), **data}
        (folder / name).write_text(page(body, whole), encoding="utf-8")
    return folder


def place(component: str, data: str) -> str:
    """Return the container of a component."""
    return f'<section class="place" data-component="{component}" data-from="{data}"></section>'
