"""Instruments on a page: parts, what they stand, which routes are permitted, when to retire."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from basinside.render.view_types.text import (
    FactView,
    FigureView,
    LinkView,
    PictureView,
    Prose,
    SignView,
    WaiverView,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class PartView:
    """One part; ``name`` with its count, ``facts`` from where it touches to when it is retired.

    ``warn`` are words that stand right beside the name: what ruins this part at once.
    """

    anchor: str
    name: str
    count: str
    warn: tuple[str, ...] = ()
    facts: tuple[FactView, ...]
    waivers: tuple[WaiverView, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class VerdictView:
    """Whether one part stands one route: always a word first, then why and who says so.

    ``some`` is for a whole instrument of which some parts stand it.
    """

    verdict: Literal["yes", "some", "no", "not stated"]
    word: str
    reason: Prose = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class MatrixRowView:
    """One part with a verdict for each route, in the order of the columns."""

    name: str
    href: str = ""
    verdicts: tuple[VerdictView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class MatrixView:
    """Parts by routes; ``corner`` heads the column of parts, ``notes`` give the sources."""

    caption: str
    corner: str
    columns: tuple[str, ...]
    rows: tuple[MatrixRowView, ...]
    notes: tuple[FactView, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class RouteView:
    """One route for this instrument: the verdict in words, and what follows.

    A permitted route has its level and time in ``facts`` and its ``procedures``. A refused one
    has a line for each part in ``facts`` (part; property; source) and ``instead``. A route that
    is permitted for some parts (``partly``) has both; ``fit`` names the parts that may.
    """

    anchor: str
    name: str
    permitted: bool
    partly: bool = False
    verdict: str
    fit: FactView | None = None
    reason: Prose = ()
    facts: tuple[FactView, ...] = ()
    procedures: tuple[LinkView, ...] = ()
    instead: Prose = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class TestLineView:
    """One line of the function test: do, wait, what must happen, and what if it does not."""

    __test__ = False

    do: Prose
    wait: FigureView | None = None
    expect: FactView
    if_not: FactView


@dataclass(frozen=True, slots=True, kw_only=True)
class LookAlikeView:
    """Another instrument that looks the same, drawn beside this one (``own``)."""

    link: LinkView
    tell_apart: Prose
    own: PictureView | None = None
    picture: PictureView | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class InstrumentView:
    """``instruments/ID.html``. A list that is empty has no heading on the page.

    ``never`` is what nobody may do with it, such as heating it: in large letters, at the top.
    """

    title: str
    lead: Prose
    never: FactView | None = None
    facts: tuple[FactView, ...]
    assembled: PictureView | None = None
    drawing: PictureView | None = None
    procedures_heading: str = ""
    procedures: tuple[LinkView, ...] = ()
    look_alikes_heading: str = ""
    look_alikes: tuple[LookAlikeView, ...] = ()
    routes_heading: str = ""
    routes: tuple[RouteView, ...] = ()
    parts_heading: str = ""
    parts_note: Prose = ()
    parts: tuple[PartView, ...] = ()
    take_apart_heading: str = ""
    take_apart: tuple[str, ...] = ()
    matrix_heading: str = ""
    matrix: MatrixView | None = None
    test_heading: str = ""
    test_note: Prose = ()
    test: tuple[TestLineView, ...] = ()
    retire_heading: str = ""
    retire: tuple[FactView, ...] = ()
    use_limit: FigureView | None = None
    handling_heading: str = ""
    handling: tuple[FactView, ...] = ()
    waivers_heading: str = ""
    waivers: tuple[WaiverView, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class SingleUseView:
    """``instruments/ID.html`` of an item that is never used twice."""

    title: str
    sign: SignView | None = None
    refusal: str
    reason: Prose
    found_heading: str
    found: Prose
    picture: PictureView | None = None
    facts: tuple[FactView, ...] = ()
    related: tuple[LinkView, ...] = ()
