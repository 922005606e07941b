"""The page of the calculators: one below the other, each with the clinic's own usual amounts."""

from __future__ import annotations

from dataclasses import dataclass

from basinside.render.view_types.procedure import DangerView
from basinside.render.view_types.sections import TableView
from basinside.render.view_types.text import LinkView, Prose


@dataclass(frozen=True, slots=True, kw_only=True)
class AmountSectionView:
    """One calculator: its form is the script's, its table and its cautions stand without one."""

    kind: str
    heading: str
    lead: Prose
    table: TableView | None
    dangers: tuple[DangerView, ...]
    cautions: tuple[Prose, ...]
    source_label: str
    sources: tuple[str, ...]
    links_label: str = ""
    links: tuple[LinkView, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class AmountsView:
    """``amounts.html``."""

    title: str
    lead: Prose
    jump_label: str
    jump: tuple[LinkView, ...]
    sections: tuple[AmountSectionView, ...]
