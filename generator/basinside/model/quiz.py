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
from basinside.model.words import ItemKind, Pool, Thinking


class Option(Entry):
    """One option: right or wrong, why, and for a wrong one the belief behind it."""

    right: Prose | None = None
    wrong: Prose | None = None
    because: Prose | None = None
    shows: Prose | None = None
    unsafe: Truth = False

    @property
    def is_right(self) -> bool:
        """Whether the author marked it right."""
        return self.right is not None

    @property
    def text(self) -> str:
        """What the reader sees."""
        return self.right if self.right is not None else self.wrong or ""


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
    """One question."""

    item: Id
    kind: ItemKind
    thinking: Thinking
    critical: Truth = False
    objective: Text
    about: tuple[Text, ...] = ()
    rests_on: RestsOn | None = None
    situation: Prose | None = None
    stem: Prose
    options: tuple[Option, ...]
    negative: Truth = False
    picture: Text | None = None
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
