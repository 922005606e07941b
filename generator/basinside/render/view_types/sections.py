"""Pages that are read from top to bottom: for a visit, and for the trainer."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from basinside.render.view_types.text import FactView, LinkView, Prose


@dataclass(frozen=True, slots=True, kw_only=True)
class TableView:
    """A plain table; the first cell of each row is its heading."""

    caption: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class TickView:
    """One mark on an axis: where it stands in the drawing, and what it says."""

    axis: Literal["across", "up"]
    at: str
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CurveView:
    """A drawn course of temperature over time, in units of the drawing.

    ``points`` are the corners of the line, ``needed`` the height of the level that was asked for;
    ``held`` are the left edge and the width of the time that counts, empty when none does.
    """

    alt: str
    caption: Prose
    points: str
    needed: str
    needed_text: str
    held: tuple[str, ...] = ()
    ticks: tuple[TickView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SectionView:
    """A heading and what stands below it, in this order; what is empty is not there."""

    anchor: str
    heading: str
    text: tuple[Prose, ...] = ()
    curve: CurveView | None = None
    facts: tuple[FactView, ...] = ()
    table: TableView | None = None
    links: tuple[LinkView, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class VisitView:
    """``visit.html``: what an auditor asks for, as far as the handbook holds it."""

    title: str
    lead: Prose
    sections: tuple[SectionView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class TrainerView:
    """``trainer.html``: why time and heat belong together, with numbers worked out here."""

    title: str
    lead: Prose
    rule: Prose
    sections: tuple[SectionView, ...]
