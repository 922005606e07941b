"""Chemicals, the ways of reprocessing that use them, and what to do when something went wrong."""

from __future__ import annotations

from dataclasses import dataclass

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
class AgentRowView:
    """One chemical in the list of all: its signs, what it is, how far it is used here."""

    anchor: str
    link: LinkView
    hazards: tuple[SignView, ...] = ()
    facts: tuple[FactView, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class AgentsView:
    """``agents/index.html``: every chemical of the clinic."""

    title: str
    lead: Prose
    rows: tuple[AgentRowView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class AgentView:
    """``agents/ID.html``: a chemical, how it hurts, what it must never meet, first aid.

    ``statements`` are the hazard statements of its label, code beside meaning.
    """

    title: str
    lead: Prose
    hazards_heading: str = ""
    hazards: tuple[SignView, ...] = ()
    statements: tuple[FactView, ...] = ()
    statements_note: Prose = ()
    asks_heading: str = ""
    asks: tuple[str, ...] = ()
    never_heading: str = ""
    never: Prose = ()
    wear_heading: str = ""
    wear: tuple[SignView, ...] = ()
    figures: tuple[FigureView, ...] = ()
    facts_heading: str = ""
    facts: tuple[FactView, ...] = ()
    first_aid_heading: str = ""
    first_aid: tuple[LinkView, ...] = ()
    used_heading: str = ""
    used: tuple[LinkView, ...] = ()
    used_note: Prose = ()
    waivers: tuple[WaiverView, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class WayView:
    """One way of reprocessing: its values, what it needs, for which instruments, which vessels.

    ``allowed`` and ``refused`` lead to instruments, each with for which parts or why not.
    """

    anchor: str
    name: str
    level: str
    note: Prose = ()
    figures: tuple[FigureView, ...] = ()
    facts: tuple[FactView, ...] = ()
    allowed_heading: str = ""
    allowed: tuple[LinkView, ...] = ()
    refused_heading: str = ""
    refused: tuple[LinkView, ...] = ()
    vessels_heading: str = ""
    vessels: tuple[FactView, ...] = ()
    needs_heading: str = ""
    needs: tuple[Prose, ...] = ()
    waivers: tuple[WaiverView, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class WaysView:
    """``routes.html``: every way of reprocessing that the handbook knows."""

    title: str
    lead: Prose
    jump_label: str
    jump: tuple[LinkView, ...]
    ways: tuple[WayView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class IncidentView:
    """One thing that can go wrong: the first minute large, then whom to ring and how soon."""

    anchor: str
    name: str
    first_word: str
    first_minute: Prose
    wait: FigureView | None = None
    then: FactView
    ring: tuple[FactView, ...] = ()
    source: Prose = ()
    picture: PictureView | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class IncidentsView:
    """``incidents.html``: read in a hurry, without a script."""

    title: str
    lead: Prose
    jump_label: str
    jump: tuple[LinkView, ...]
    incidents: tuple[IncidentView, ...]
    contacts_heading: str = ""
    contacts_anchor: str = ""
    contacts: tuple[FactView, ...] = ()
