"""Values, sources, chemicals, and what to do when something went wrong."""

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
class ValueView:
    """One value at its own place: how much, what it is, on whose word, where it is used."""

    anchor: str
    figure: FigureView
    is_: Prose
    facts: tuple[FactView, ...]
    used_label: str = ""
    used: tuple[LinkView, ...] = ()
    waivers: tuple[WaiverView, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class ValueGroupView:
    """Values of one subject."""

    anchor: str
    heading: str
    rows: tuple[ValueView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ChoiceView:
    """Where sources differ: what is done here, why, the other views, who chose, when next."""

    anchor: str
    is_: Prose
    chosen: FactView
    because: FactView
    others: tuple[FactView, ...]
    facts: tuple[FactView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ValuesView:
    """``values.html``: every value once, and every choice between sources."""

    title: str
    lead: Prose
    groups: tuple[ValueGroupView, ...]
    choices_heading: str = ""
    choices_lead: Prose = ()
    choices: tuple[ChoiceView, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class SourceView:
    """One source; an address is a text to be typed, never a link."""

    anchor: str
    title: str
    facts: tuple[FactView, ...]
    used_label: str = ""
    used: tuple[LinkView, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class SourcesView:
    """``sources.html``; ``bases`` explain in words what each basis is worth."""

    title: str
    lead: Prose
    sources: tuple[SourceView, ...]
    bases_heading: str = ""
    bases: tuple[FactView, ...] = ()
    unsourced_heading: str = ""
    unsourced: tuple[LinkView, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class AgentView:
    """``agents/ID.html``: a chemical, how it hurts, what it must never meet, first aid."""

    title: str
    lead: Prose
    hazards_heading: str = ""
    hazards: tuple[SignView, ...] = ()
    never_heading: str = ""
    never: Prose = ()
    wear_heading: str = ""
    wear: tuple[SignView, ...] = ()
    facts: tuple[FactView, ...] = ()
    figures: tuple[FigureView, ...] = ()
    first_aid_heading: str = ""
    first_aid: tuple[LinkView, ...] = ()
    used_heading: str = ""
    used: tuple[LinkView, ...] = ()
    waivers: tuple[WaiverView, ...] = ()


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
    contacts: tuple[FactView, ...] = ()
