"""Procedures: stages in working order, steps with what they act on and how long they hold."""

from __future__ import annotations

from pydantic import Field

from basinside.model.entry import (
    Decided,
    EditionId,
    Entry,
    FigureRef,
    Id,
    Prose,
    Text,
    Truth,
    Waivable,
)
from basinside.model.words import (
    Action,
    DangerKind,
    MakesSure,
    PartsAre,
    StageName,
    Water,
    Worn,
    Writes,
)


class Longest(FigureRef):
    """How long a step's result may wait before something else happens."""

    before: Text


class Hold(FigureRef):
    """A time that something is held, from when, and what an interruption means.

    With ``goes_on`` the time is not lost by an interruption: the pause is added to it.
    """

    from_: Prose | None = Field(default=None, alias="from")
    if_interrupted: Prose | None = None
    goes_on: Truth = False
    no_longer_than: FigureRef | None = None


class Danger(Entry):
    """What can hurt in this step."""

    kind: DangerKind
    say: Prose


class WordingOnly(Decided):
    """A reworded step whose meaning did not change, said by name."""

    since: EditionId


class Step(Waivable):
    """One thing to do.

    ``do`` says it to people. ``makes_sure`` and ``writes`` say to the rules, in words of closed
    lists, what the sentence looks after and what is written down; neither is shown nor signed.
    """

    step: Id
    action: Action
    do: Prose
    wall: Prose | None = None
    why: Prose | None = None
    safety: Truth = False
    wear: tuple[Worn, ...] = ()
    danger: Danger | None = None
    hold: Hold | None = None
    longest: Longest | None = None
    wait: FigureRef | None = None
    agent: Id | None = None
    strength: FigureRef | None = None
    temperature: FigureRef | None = None
    parts: tuple[Id, ...] = ()
    parts_are: PartsAre | None = None
    makes_sure: tuple[MakesSure, ...] = ()
    writes: tuple[Writes, ...] = ()
    water: Water | None = None
    in_: Id | None = Field(default=None, alias="in")
    with_: tuple[Id, ...] = Field(default=(), alias="with")
    wrap: Truth | None = None
    needs: tuple[Id, ...] = ()
    see: Id | None = None
    choice: Text | None = None
    picture: Text | None = None
    wording_only: WordingOnly | None = None


class Stage(Entry):
    """One stage; a stage may return later in the same procedure."""

    stage: StageName
    steps: tuple[Step, ...] = ()
    not_applicable: Prose | None = None


class Procedure(Waivable):
    """One way to bring one instrument back to the shelf, or a task of the work around it.

    Without a route it brings nothing to a level: a test of an instrument before use, or, without
    an instrument too, a task that several procedures share.
    """

    procedure: Id
    variant_of: Id | None = None
    title: Text | None = None
    instrument: Id | None = None
    route: Id | None = None
    vessel: Id | None = None
    parts: tuple[Id, ...] = ()
    stages: tuple[Stage, ...]

    @property
    def steps(self) -> tuple[tuple[Stage, Step], ...]:
        """All steps in working order, each with its stage."""
        return tuple((stage, step) for stage in self.stages for step in stage.steps)
