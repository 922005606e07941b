"""Questions, assessments and observation lines."""

from __future__ import annotations

from typing import Annotated, Any

from pydantic import Discriminator, Field, Tag

from basinside.model.entry import (
    Amount,
    Citation,
    Count,
    EditionId,
    Entry,
    FigureId,
    Id,
    Mapping,
    Percent,
    Prose,
    StepPath,
    Text,
    Truth,
    Waivable,
)
from basinside.model.item_kinds import Matter, NumberAsked, Option, OrderEntry, Pair
from basinside.model.words import ItemKind, Pool, Thinking


class RestsOn(Entry):
    """What a hand-written key depends on."""

    read_in: EditionId
    values: Mapping[FigureId, Amount] = {}
    steps: tuple[StepPath, ...] = ()
    orders: tuple[tuple[Text, ...], ...] = ()


class BuiltOn(Entry):
    """A published event that a question was built on, in our own words."""

    says: Prose
    source: Citation


class Item(Waivable):
    """One question; ``kind`` says with which of its blocks it is answered.

    ``options``: choice and multiple. ``entries`` (in the right order), ``matters``, ``because``
    and ``shows``: order. ``number``: numeric. ``pairs`` and ``extra``: match.
    """

    item: Id
    kind: ItemKind
    thinking: Thinking
    critical: Truth = False
    objective: Text
    about: tuple[Text, ...] = ()
    rests_on: RestsOn | None = None
    situation: Prose | None = None
    stem: Prose
    options: tuple[Option, ...] = ()
    entries: tuple[OrderEntry, ...] = ()
    matters: tuple[Matter, ...] = ()
    because: Prose | None = None
    shows: Prose | None = None
    number: NumberAsked | None = None
    pairs: tuple[Pair, ...] = ()
    extra: tuple[Prose, ...] = ()
    negative: Truth = False
    picture: Text | None = None
    picture_shows: Prose | None = None
    built_on: BuiltOn | None = None


class Scenario(Entry):
    """One situation with several items, each answerable whatever the others were."""

    scenario: Id
    situation: Prose
    built_on: BuiltOn | None = None
    items: tuple[Item, ...]


def _which(value: Any) -> str:
    if isinstance(value, dict) and "scenario" in value:
        return "scenario"
    return "scenario" if isinstance(value, Scenario) else "item"


ItemOrScenario = Annotated[
    Annotated[Item, Tag("item")] | Annotated[Scenario, Tag("scenario")], Discriminator(_which)
]


class QuestionFile(Entry):
    """One file of ``quizzes/questions/``."""

    topic: Id
    title: Text | None = None
    pool: Pool
    items: tuple[ItemOrScenario, ...]


class Pass(Entry):
    """When a form is passed."""

    percent: Percent
    critical: Text = "all"


class Blueprint(Entry):
    """What a form is made of."""

    topics: Mapping[Id, Percent]
    at_least: Mapping[Thinking, Percent] = {}


class Assessment(Waivable):
    """An assessment that counts towards competency."""

    assessment: Id
    title: Text
    version: Count
    items: Count
    forms: Count
    pass_: Pass = Field(alias="pass")
    attempts: Count = 1
    minutes: Count | None = None
    blueprint: Blueprint


class ObservationLine(Entry):
    """Something to be seen that the safety steps do not say already."""

    line: Id
    see: Prose


class Observation(Waivable):
    """What an observer looks for beyond the safety steps."""

    observation: Id
    lines: tuple[ObservationLine, ...] = ()
    cues: tuple[Prose, ...] = ()
    who_may_observe: Prose | None = None
