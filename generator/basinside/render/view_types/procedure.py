"""Procedures on a page: the flow line, its stages, and their steps."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from basinside.render.view_types.text import (
    DecidedView,
    FactView,
    FigureView,
    LinkView,
    NoteView,
    PictureView,
    Prose,
    SignView,
    WaiverView,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class BasinView:
    """One stage on the flow line; ``state_word`` says a state that is not plain ``next``.

    Only what somebody confirmed is ``done``; a built page holds none of it.
    """

    label: str
    sublabel: str = ""
    href: str = ""
    state: Literal["next", "now", "done"] = "next"
    state_word: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class FlowView:
    """The line from point of use to storage; ``label`` names it for those who do not see it."""

    label: str
    basins: tuple[BasinView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class DangerView:
    """What can hurt: the sign with its word, and what to do about it."""

    sign: SignView
    say: Prose


@dataclass(frozen=True, slots=True, kw_only=True)
class StepWords:
    """The words that every step of a page shares."""

    why: str
    safety: str
    wear: str
    needs: str
    practise: str


@dataclass(frozen=True, slots=True, kw_only=True)
class StepLineView:
    """One line that the instrument has for a step; ``then`` says what follows from it."""

    do: Prose
    then: tuple[FactView, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class StepView:
    """One step.

    ``facts`` are short lines beside the sentence: how parts are, which water, from when a hold
    counts, what an interruption means, how long at most. ``practise`` leads to self-test items.
    ``lines`` are the instrument's own: the parts in order, or its function test;
    ``lines_short`` when each is a name. ``wear_same``: as at the step before in this stage, so
    that paper need not say it again.
    """

    number: str
    anchor: str
    do: Prose
    why: Prose = ()
    safety: bool = False
    danger: DangerView | None = None
    wear: tuple[SignView, ...] = ()
    wear_same: bool = False
    needs: tuple[str, ...] = ()
    timer: bool = False
    figure: FigureView | None = None
    facts: tuple[FactView, ...] = ()
    lines: tuple[StepLineView, ...] = ()
    lines_short: bool = False
    decided: DecidedView | None = None
    source: NoteView | None = None
    picture: PictureView | None = None
    practise: tuple[LinkView, ...] = ()
    waivers: tuple[WaiverView, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class StageView:
    """One stage: its name, which steps it holds in words, or why it has none."""

    anchor: str
    name: str
    note: str
    steps: tuple[StepView, ...] = ()
    not_applicable: Prose = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class ValueLineView:
    """One value of the closing list: what it is, how much, on whose word."""

    value: Prose
    is_: Prose
    source: Prose


@dataclass(frozen=True, slots=True, kw_only=True)
class ProcedureView:
    """``procedures/ID.html``, and the job aid when it is printed."""

    title: str
    lead: Prose
    not_here: FactView | None = None
    never: FactView | None = None
    notes: tuple[Prose, ...] = ()
    paper_note: Prose = ()
    picture: PictureView | None = None
    facts: tuple[FactView, ...]
    flow: FlowView | None = None
    ready: NoteView | None = None
    words: StepWords
    stages: tuple[StageView, ...]
    values_heading: str = ""
    value_lines: tuple[ValueLineView, ...] = ()
    related_heading: str = ""
    related: tuple[LinkView, ...] = ()
    waivers: tuple[WaiverView, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class ProcedureRowView:
    """One procedure in the list of all: its name and the facts that tell it from its siblings."""

    link: LinkView
    facts: tuple[FactView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ProcedureGroupView:
    """The procedures of one instrument, or of the work that several share (without ``href``)."""

    anchor: str
    name: str
    href: str = ""
    note: Prose = ()
    picture: PictureView | None = None
    rows: tuple[ProcedureRowView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ProcedureIndexView:
    """The list of all procedures, by instrument."""

    title: str
    lead: Prose
    jump_label: str
    jump: tuple[LinkView, ...]
    groups: tuple[ProcedureGroupView, ...]
    sheets_heading: str = ""
    sheets_anchor: str = ""
    sheets: tuple[LinkView, ...] = ()
