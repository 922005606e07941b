"""Everything an author wrote, gathered; gaps stay gaps."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any, NamedTuple

from basinside.model.equipment import Agent, Equipment, Incident, Route, Word
from basinside.model.figure import Choice, Figure, Source
from basinside.model.handbook import Handbook, Vessel
from basinside.model.instrument import Instrument
from basinside.model.picture import Picture
from basinside.model.procedure import Procedure
from basinside.model.quiz import Assessment, Item, Observation, QuestionFile, Scenario
from basinside.model.standard import Standard


class AskedItem(NamedTuple):
    """An item with the topic, the pool and the scenario it stands in."""

    item: Item
    topic: str
    pool: str
    scenario: Scenario | None

    @property
    def situation(self) -> str:
        """The situation shown before the stem, or nothing."""
        own = self.item.situation or ""
        return own if self.scenario is None else " ".join((self.scenario.situation, own)).strip()


def _asked_in(questions: QuestionFile) -> Iterator[AskedItem]:
    for entry in questions.items:
        if isinstance(entry, Scenario):
            for item in entry.items:
                yield AskedItem(item, questions.topic, questions.pool, entry)
        else:
            yield AskedItem(entry, questions.topic, questions.pool, None)


@dataclass(frozen=True, kw_only=True)
class Content:
    """The model of one handbook.

    ``unread`` are files out of which nothing could be read. ``named`` are the ids of values and
    sources that were seen while reading, in sentences and in the fields that hold such ids.
    """

    handbook: Handbook | None = None
    sources: Mapping[str, Source] = field(default_factory=dict)
    figures: Mapping[str, Figure] = field(default_factory=dict)
    choices: Mapping[str, Choice] = field(default_factory=dict)
    agents: Mapping[str, Agent] = field(default_factory=dict)
    routes: Mapping[str, Route] = field(default_factory=dict)
    equipment: Mapping[str, Equipment] = field(default_factory=dict)
    words: Mapping[str, Word] = field(default_factory=dict)
    incidents: Mapping[str, Incident] = field(default_factory=dict)
    instruments: Mapping[str, Instrument] = field(default_factory=dict)
    procedures: Mapping[str, Procedure] = field(default_factory=dict)
    questions: tuple[QuestionFile, ...] = ()
    assessments: Mapping[str, Assessment] = field(default_factory=dict)
    observations: Mapping[str, Observation] = field(default_factory=dict)
    standards: Mapping[str, Standard] = field(default_factory=dict)
    pictures: Mapping[str, Picture] = field(default_factory=dict)
    editions: Mapping[str, Mapping[str, Any]] = field(default_factory=dict)
    unread: frozenset[str] = frozenset()
    named: frozenset[str] = frozenset()

    def items(self, pool: str = "") -> tuple[AskedItem, ...]:
        """Return every item in file order, of one pool or of both."""
        if not pool:
            return self._asked
        return tuple(each for each in self._asked if each.pool == pool)

    def asked_about(self, pool: str) -> Mapping[str, tuple[AskedItem, ...]]:
        """Return the items of a pool by what they are about or rest on.

        Keys are as ``about:`` writes them: ``procedure/step`` for a step, an id for an entry.
        """
        found: dict[str, list[AskedItem]] = {}
        for asked in self.items(pool):
            rests_on = asked.item.rests_on
            for about in dict.fromkeys((*asked.item.about, *(rests_on.steps if rests_on else ()))):
                found.setdefault(about, []).append(asked)
        return {about: tuple(several) for about, several in found.items()}

    @cached_property
    def _asked(self) -> tuple[AskedItem, ...]:
        return tuple(each for questions in self.questions for each in _asked_in(questions))

    def instrument_of(self, procedure: Procedure) -> Instrument | None:
        """Return the instrument a procedure is about; None when it names none that is known."""
        return self.instruments.get(procedure.instrument) if procedure.instrument else None

    def route_of(self, procedure: Procedure) -> Route | None:
        """Return the route a procedure takes; None when it names none that is known."""
        return self.routes.get(procedure.route) if procedure.route else None

    def vessel(self, vessel: str) -> Vessel | None:
        """Return the vessel with that id."""
        if self.handbook is None:
            return None
        return next((each for each in self.handbook.clinic.vessels if each.vessel == vessel), None)
