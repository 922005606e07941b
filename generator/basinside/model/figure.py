"""Values (figures in YAML), the choices between sources, and the sources themselves."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from basinside.model.entry import (
    Amount,
    Citation,
    Day,
    Decided,
    Entry,
    FigureId,
    FigureRef,
    Id,
    Mapping,
    Prose,
    Text,
    Waivable,
)
from basinside.model.words import Basis


class SourceSays(Entry):
    """What the cited place prints; exactly one key is used."""

    at_least: Amount | None = None
    at_most: Amount | None = None
    exactly: Amount | None = None
    between: tuple[Amount, Amount] | None = None


class MakerSays(SourceSays):
    """What the maker's instructions ask for where a local value differs, and where they say it."""

    source: Citation


class WorkedOut(Entry):
    """What a computed value follows from in this clinic; one of four.

    ``of`` a chemical ``to`` a strength ``in`` a volume (in each litre, where none is named): how
    much of the product, or how many parts of water to one of it. ``boils``: where water boils
    here. ``gauge_for``: what a gauge shows here at a temperature. ``reached_by``: how hot a vessel
    gets here.
    """

    of: Id | None = None
    to: FigureRef | None = None
    in_: FigureRef | None = Field(default=None, alias="in")
    boils: Literal["here"] | None = None
    gauge_for: FigureRef | None = None
    reached_by: Id | None = None


class Figure(Waivable):
    """A value with its unit, its basis and its source, kept once."""

    is_: Prose = Field(alias="is")
    value: Amount
    source_says: SourceSays | None = None
    basis: Basis
    source: Citation | None = None
    checked: Day | None = None
    other_view: Prose | None = None
    maker_says: MakerSays | None = None
    accepted: Decided | None = None
    worked_out: WorkedOut | None = None


class NotChosen(Entry):
    """The other view of a choice."""

    what: Prose
    basis: Basis | None = None
    source: Citation | None = None


class Choice(Decided):
    """What this clinic does where sources differ, and who chose it."""

    is_: Prose = Field(alias="is")
    chosen: Prose
    because: Prose
    basis: Basis | None = None
    source: Citation | None = None
    not_chosen: tuple[NotChosen, ...]
    waive: tuple[()] = ()


class FigureFile(Entry):
    """One file of ``content/figures/``."""

    figures: Mapping[FigureId, Figure] = Field(default_factory=dict)
    choices: Mapping[FigureId, Choice] = Field(default_factory=dict)


class Source(Waivable):
    """A document that values and permissions are taken from."""

    by: Text
    title: Text
    year: Text | None = None
    held: Text | None = None
    address: Text | None = None
    licence: Text | None = None
    superseded_by: Id | None = None


class SourceFile(Entry):
    """``content/sources.yaml``."""

    sources: Mapping[Id, Source]
