"""What is looked up: values, choices between sources, the sources themselves, and words."""

from __future__ import annotations

from dataclasses import dataclass

from basinside.render.view_types.text import (
    FactView,
    FigureView,
    LinkView,
    Prose,
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
class MovedView:
    """A row that leads on from an old address to the new one."""

    anchor: str
    link: LinkView


@dataclass(frozen=True, slots=True, kw_only=True)
class ValuesView:
    """``values.html``: every value once; ``moved`` lead to the choices, which have a page.

    Each of ``moved`` keeps the address that the choice had on this page.
    """

    title: str
    lead: Prose
    jump_label: str
    jump: tuple[LinkView, ...]
    groups: tuple[ValueGroupView, ...]
    choices_heading: str = ""
    choices_lead: Prose = ()
    moved: tuple[MovedView, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class ChoicesView:
    """``choices.html``: where sources differ, what is done here, and the other views."""

    title: str
    lead: Prose
    jump_label: str
    jump: tuple[LinkView, ...]
    choices: tuple[ChoiceView, ...]


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
    unsourced_anchor: str = ""
    unsourced_heading: str = ""
    unsourced: tuple[LinkView, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class WordView:
    """One word of the trade: what it means, what else it is called, what it is taken for."""

    anchor: str
    word: str
    means: Prose
    facts: tuple[FactView, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class WordsView:
    """``words.html``, in the order of the alphabet."""

    title: str
    lead: Prose
    words: tuple[WordView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ReferenceView:
    """``reference.html``: the way to everything that is looked up, and to how it stands."""

    title: str
    lead: Prose
    ways_label: str
    ways: tuple[LinkView, ...]
    standing_heading: str = ""
    standing: tuple[LinkView, ...] = ()
    more_heading: str = ""
    more: tuple[LinkView, ...] = ()
