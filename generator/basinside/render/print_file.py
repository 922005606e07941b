"""Any choice of sheets as one file that needs nothing beside it."""

from __future__ import annotations

import base64
import hashlib
import re
from collections.abc import Iterable
from dataclasses import replace
from typing import Final

from markupsafe import Markup

from basinside.model.content import Content
from basinside.model.derived import Derived
from basinside.render.environment import Theme
from basinside.render.view_types.prints import PrintFileView, SheetView
from basinside.render.views.paper import paper_chrome
from basinside.render.views.prints.catalogue import Print, kind_words, prints
from basinside.render.views.spot import Desk, Spot
from basinside.render.wording import _

_NAMED: Final = re.compile(r'((?:\bid="|="#|url\(#))')

POLICY: Final = (
    "default-src 'none'; style-src 'sha256-{digest}'; base-uri 'none'; form-action 'none'"
)
"""The content policy of the file: its own style and nothing else."""


def all_prints(content: Content, derived: Derived, theme: Theme) -> tuple[Print, ...]:
    """Return every sheet that a handbook has, in the order of the list of all paper."""
    return tuple(prints(_spot(content, derived, theme)))


def described(one: Print) -> str:
    """Return what a sheet is, in words."""
    if not one.of:
        return one.short
    return _("{kind}: {short}").format(kind=kind_words(one.kind), short=one.short)


def print_file(content: Content, derived: Derived, theme: Theme, chosen: Iterable[Print]) -> str:
    """Return sheets as one HTML file, each on a page of its own, with no script.

    Args:
        content: the model.
        derived: what follows from it.
        theme: templates and style.
        chosen: the sheets, in the order in which they are printed.
    """
    spot = _spot(content, derived, theme)
    sheets = tuple(_own_ids(each.view(spot), n) for n, each in enumerate(chosen, 1))
    style = theme.stylesheet()
    digest = base64.b64encode(hashlib.sha256(style.encode()).digest()).decode()
    title = sheets[0].title if len(sheets) == 1 else _("Paper")
    handbook = content.handbook
    chrome = replace(
        paper_chrome(title, handbook.language if handbook else "en"),
        policy=POLICY.format(digest=digest),
        stylesheet="",
        sprite=theme.sprite(spot.signs),
    )
    view = PrintFileView(
        title=title,
        style=Markup("<style>{}</style>").format(Markup(style)),  # noqa: S704 - of our theme
        sheets=sheets,
    )
    return theme.page(view, chrome)


def _own_ids(sheet: SheetView, number: int) -> SheetView:
    """Return a sheet whose drawing names its parts as no other sheet of the file does."""
    drawing = sheet.drawing
    if drawing is None:
        return sheet
    svg = _NAMED.sub(rf"\g<1>s{number}-", str(drawing.svg))
    return replace(sheet, drawing=replace(drawing, svg=Markup(svg)))  # noqa: S704 - was checked


def _spot(content: Content, derived: Derived, theme: Theme) -> Spot:
    return Spot(desk=Desk(content=content, derived=derived, theme=theme), path="print.html")
