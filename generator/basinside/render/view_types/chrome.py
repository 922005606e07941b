"""What surrounds every page: head, header, banners, foot, and what each sheet of paper carries."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Literal

from markupsafe import Markup

from basinside.render.view_types.text import FactView, LinkView, Prose

NOTHING = Markup("")


@dataclass(frozen=True, slots=True, kw_only=True)
class NavItem:
    """One way on from the header; only what exists is listed."""

    text: str
    href: str
    current: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class BannerView:
    """Something that the whole page has to own up to: overdue, waived, a problem, a demo.

    ``word`` is its state in a word; a banner that only a script may show (a review that is
    overdue today) is ``hidden`` and carries an ``anchor`` for that script.
    """

    kind: Literal["overdue", "waived", "problem", "demonstration", "notice"]
    word: str
    text: Prose
    link: LinkView | None = None
    anchor: str = ""
    hidden: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class InlineData:
    """JSON for a script: the template writes ``value`` with every ``<`` as an escape."""

    anchor: str
    value: Any


@dataclass(frozen=True, slots=True, kw_only=True)
class ChromeView:
    """The frame of one page.

    ``policy`` is the content policy, given so that a preview can differ. ``stylesheet``,
    ``scripts`` and ``home`` are addresses relative to this page. ``cautions`` stand in the foot of
    every page; ``paper`` are the facts that must be on every printed sheet: edition, review
    date, void after, whom to ring. ``panel`` is the id of the place for the capability panel.
    ``timers`` tells whether the page shows the times that run; ``up`` leads to the folder's root.
    """

    language: str
    direction: Literal["ltr", "rtl"] = "ltr"
    policy: str
    title: str
    stylesheet: str
    scripts: tuple[str, ...] = ()
    site_title: str
    home: str
    skip: str
    nav_label: str
    nav: tuple[NavItem, ...]
    alarm: LinkView
    languages_label: str = ""
    languages: tuple[LinkView, ...] = ()
    banners_label: str = ""
    banners: tuple[BannerView, ...] = ()
    panel: str = ""
    timers: bool = False
    up: str = ""
    facts: tuple[FactView, ...] = ()
    cautions: tuple[Prose, ...] = ()
    paper: tuple[FactView, ...] = ()
    data: tuple[InlineData, ...] = ()
    sprite: Markup = NOTHING
