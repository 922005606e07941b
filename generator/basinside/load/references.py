"""Every id that an entry names must name something; a wrong one gets the nearest known."""

from __future__ import annotations

import difflib
from collections.abc import Callable, Iterable, Iterator, Mapping
from functools import lru_cache
from itertools import chain
from typing import Any, Final, NamedTuple, get_args

from pydantic import BaseModel

from basinside.load.entries import CUT_IN_BRACKETS
from basinside.load.mentions import Mention
from basinside.model.content import Content
from basinside.model.entry import FigureRef
from basinside.model.equipment import Agent, IncidentFile, Route
from basinside.model.figure import FigureFile
from basinside.model.handbook import Handbook
from basinside.model.instrument import Instrument
from basinside.model.procedure import Procedure, Step
from basinside.model.quiz import Assessment, Item, Observation, QuestionFile, Scenario
from basinside.problem import Level, Place, Problem
from basinside.quantity import QuantityError


class Named(NamedTuple):
    """An id that an entry names: of which kind, which, and where."""

    kind: str
    id: str
    place: Place


def reference_problems(
    content: Content,
    named: Iterable[tuple[Named, ...]],
    mentions: Mapping[str, tuple[Mention, ...]],
    unread: Iterable[str] = (),
) -> list[Problem]:
    """Return a problem for every id that names nothing, and for units that do not fit.

    Args:
        content: the model.
        named: the ids that each file names outside prose.
        mentions: file -> the values that its sentences refer to.
        unread: files that could not be read; an id that may stand in one of them is not missed.
    """
    known = _known(content)
    hidden = _Hidden(unread)
    problems: list[Problem] = []
    for each in chain.from_iterable(named):
        if each.id not in known[each.kind] and not hidden.may_hold(each):
            problems.append(_unknown(each, known[each.kind]))
    for file, mentioned in mentions.items():
        for mention in mentioned:
            place = Place(file, (), mention.mark)
            figure = content.figures.get(mention.figure)
            if figure is None:
                missed = Named("value", mention.figure, place)
                if not hidden.may_hold(missed):
                    problems.append(_unknown(missed, known["value"]))
            elif mention.unit:
                try:
                    figure.value.in_unit(mention.unit)
                except QuantityError:
                    kind = figure.value.kind
                    said = f"{mention.figure} is {kind} and cannot be shown in “{mention.unit}”"
                    problems.append(_problem(place, "bad-value", said, f"Name a unit of {kind}"))
    return problems


class _Hidden:
    """Where an id may stand that was not found, because a file could not be read."""

    def __init__(self, unread: Iterable[str]) -> None:
        self.unread = frozenset(unread)
        self.folders = {file.rsplit("/", 1)[0] for file in self.unread}

    def may_hold(self, named: Named) -> bool:
        """Return whether a file that could not be read may hold the id."""
        if not self.unread:
            return False
        own = named.id.split("/", 1)[0]
        for place in _HOMES[named.kind]:
            if place in self.unread or f"{place}/{own}.yaml" in self.unread:
                return True
            if place in _MANY_IN_A_FILE and place in self.folders:
                return True
        return False


def _known(content: Content) -> dict[str, Any]:
    steps = {
        f"{procedure.procedure}/{step.step}"
        for procedure in content.procedures.values()
        for _, step in procedure.steps
    }
    lines = {
        f"{each.observation}/{line.line}"
        for each in content.observations.values()
        for line in each.lines
    }
    handbook = content.handbook
    vessels = {each.vessel for each in handbook.clinic.vessels} if handbook else set()
    contacts = {each.contact for each in handbook.contacts} if handbook else set()
    scopes = set(handbook.scopes) if handbook else set()
    topics = {each.topic for each in content.questions}
    return {
        "value": content.figures,
        "choice": content.choices,
        "source": content.sources,
        "agent": content.agents,
        "route": content.routes,
        "equipment": content.equipment,
        "incident": dict.fromkeys(content.incidents),
        "instrument": content.instruments,
        "procedure": content.procedures,
        "step": steps,
        "step or line": steps
        | lines
        | set(content.agents)
        | set(content.incidents)
        | set(content.routes)
        | set(content.instruments)
        | set(content.figures)
        | set(content.choices)
        | set(content.procedures)
        | set(content.equipment),
        "vessel": vessels,
        "contact": contacts,
        "scope or procedure": scopes | set(content.procedures) | {"all"},
        "topic": topics,
        "assessment": content.assessments,
    }


def named_in(entry: object) -> Iterator[Named]:
    """Yield every id that what was read of one file names outside prose."""
    for kind, find in _FINDERS:
        if isinstance(entry, kind):
            yield from find(entry)


def _figure_file(file: FigureFile) -> Iterator[Named]:
    for figure in file.figures.values():
        yield from _citation(figure.source, figure.place)
    for choice in file.choices.values():
        yield from _citation(choice.source, choice.place)
        for n, other in enumerate(choice.not_chosen):
            yield from _citation(other.source, choice.place.at("not_chosen", n))


def _agent(agent: Agent) -> Iterator[Named]:
    yield from _figures(agent)
    yield from _many("incident", agent.first_aid, agent.place.at("first_aid"))


def _route(route: Route) -> Iterator[Named]:
    yield from _figures(route)
    yield from _one("agent", route.agent, route.place.at("agent"))
    yield from _many("equipment", route.needs, route.place.at("needs"))


def _incidents(file: IncidentFile) -> Iterator[Named]:
    for incident in file.incidents:
        yield from _figures(incident)
        yield from _one("contact", incident.contact, incident.place.at("contact"))


def _questions(file: QuestionFile) -> Iterator[Named]:
    for entry in file.items:
        for item in entry.items if isinstance(entry, Scenario) else (entry,):
            yield from _item(item)


def _assessment(assessment: Assessment) -> Iterator[Named]:
    place = assessment.blueprint.place.at("topics")
    yield from _many_keys("topic", assessment.blueprint.topics, place)


def _observation(observation: Observation) -> Iterator[Named]:
    yield Named("procedure", observation.observation, observation.place.at("observation"))


def _handbook(handbook: Handbook) -> Iterator[Named]:
    clinic = handbook.clinic
    yield from _many("route", clinic.has, clinic.place.at("has"))
    for name in ("cases_per_year", "ready_reserve"):
        yield from _many_keys("instrument", getattr(clinic, name), clinic.place.at(name))
    for scope, procedures in handbook.scopes.items():
        yield from _many("procedure", procedures, handbook.place.at("scopes", scope))
    for line in handbook.policy:
        yield from _many("scope or procedure", line.scope, line.place.at("scope"))
        if line.knowledge:
            place = line.knowledge.place.at("assessment")
            yield Named("assessment", line.knowledge.assessment, place)


def _instrument(instrument: Instrument) -> Iterator[Named]:
    place = instrument.place
    for route, reached in instrument.reaches.items():
        yield Named("route", route, place.at("reaches", route))
        yield from _citation(reached.source, reached.place)
    for alike in instrument.look_alikes:
        yield Named("instrument", alike.instrument, alike.place.at("instrument"))
    for part in instrument.parts:
        if part.survives:
            yield from _citation(part.survives.source, part.survives.place)
            yield from _many_keys("route", part.survives.routes, part.survives.place.at("routes"))
        if part.level_decided:
            yield from _citation(part.level_decided.source, part.level_decided.place)
        if part.lubricate:
            yield Named("agent", part.lubricate.with_, part.lubricate.place.at("with"))
    parts = {each.part for each in instrument.parts}
    for n, taken in enumerate(instrument.take_apart):
        if taken not in parts:
            yield Named("step", f"part {taken}", place.at("take_apart", n))
    for line in instrument.function_test:
        yield from _figures(line)
    yield from _figures(instrument)


def _procedure(procedure: Procedure) -> Iterator[Named]:
    place = procedure.place
    yield Named("instrument", procedure.instrument, place.at("instrument"))
    yield Named("route", procedure.route, place.at("route"))
    yield from _one("vessel", procedure.vessel, place.at("vessel"))
    for _, step in procedure.steps:
        yield from _step(step)


def _step(step: Step) -> Iterator[Named]:
    place = step.place
    yield from _figures(step)
    if step.hold and step.hold.no_longer_than:
        yield from _figures(step.hold)
    yield from _one("agent", step.agent, place.at("agent"))
    yield from _one("equipment", step.in_, place.at("in"))
    yield from _many("equipment", step.with_, place.at("with"))
    yield from _many("equipment", step.needs, place.at("needs"))
    yield from _one("choice", step.choice, place.at("choice"))


def _item(item: Item) -> Iterator[Named]:
    yield from _many("step or line", item.about, item.place.at("about"))
    if item.rests_on:
        rest = item.rests_on
        yield from _many_keys("value", rest.values, rest.place.at("values"))
        yield from _many("step", rest.steps, rest.place.at("steps"))


def _figures(entry: BaseModel) -> Iterator[Named]:
    for name in _figure_fields(type(entry)):
        value = getattr(entry, name)
        if value is not None:
            yield Named("value", value.figure, value.place.at("figure"))


@lru_cache(maxsize=64)
def _figure_fields(model: type[BaseModel]) -> tuple[str, ...]:
    """Return the fields of a model that are a value kept elsewhere."""
    return tuple(
        name
        for name, field in model.model_fields.items()
        if any(
            isinstance(each, type) and issubclass(each, FigureRef)
            for each in (field.annotation, *get_args(field.annotation))
        )
    )


def _citation(source: str | None, place: Place) -> Iterator[Named]:
    if source:
        yield Named("source", source.split(" ", 1)[0], place.at("source"))


def _one(kind: str, value: str | None, place: Place) -> Iterator[Named]:
    if value is not None:
        yield Named(kind, value, place)


def _many(kind: str, values: tuple[str, ...], place: Place) -> Iterator[Named]:
    for n, value in enumerate(values):
        yield Named(kind, value, place.at(n))


def _many_keys(kind: str, values: Any, place: Place) -> Iterator[Named]:
    for value in values:
        yield Named(kind, value, place.at(value))


def _unknown(named: Named, known: Any) -> Problem:
    names = [each for each in known if isinstance(each, str)]
    near = difflib.get_close_matches(named.id, names, 1, 0.6)
    in_list = bool(named.place.path) and isinstance(named.place.path[-1], int)
    hint = f"Did you mean “{near[0]}”?" if near else CUT_IN_BRACKETS if in_list else ""
    kind = "step" if named.kind == "step or line" else named.kind
    return _problem(named.place, "unknown-id", f"there is no {kind} “{named.id}”", hint)


def _problem(place: Place, rule: str, message: str, hint: str = "") -> Problem:
    return Problem(place=place, rule=rule, level=Level.NEVER, message=message, hint=hint)


_FINDERS: Final[tuple[tuple[type, Callable[[Any], Iterator[Named]]], ...]] = (
    (FigureFile, _figure_file),
    (Agent, _agent),
    (Route, _route),
    (IncidentFile, _incidents),
    (Instrument, _instrument),
    (Procedure, _procedure),
    (QuestionFile, _questions),
    (Assessment, _assessment),
    (Observation, _observation),
    (Handbook, _handbook),
)

_PROCEDURES: Final = "content/procedures"
_INSTRUMENTS: Final = "content/instruments"
_FIGURES: Final = "content/figures"
_QUESTIONS: Final = "quizzes/questions"
_HANDBOOK: Final = "content/handbook.yaml"
_EQUIPMENT: Final = "content/equipment.yaml"
_INCIDENTS: Final = "content/incidents.yaml"
_MANY_IN_A_FILE: Final = frozenset({_FIGURES, _QUESTIONS})

_HOMES: Final[dict[str, tuple[str, ...]]] = {
    "value": (_FIGURES,),
    "choice": (_FIGURES,),
    "source": ("content/sources.yaml",),
    "agent": ("content/agents",),
    "route": ("content/routes",),
    "equipment": (_EQUIPMENT,),
    "incident": (_INCIDENTS,),
    "instrument": (_INSTRUMENTS,),
    "procedure": (_PROCEDURES,),
    "step": (_PROCEDURES,),
    "step or line": (
        _PROCEDURES,
        "quizzes/observations",
        "content/agents",
        "content/routes",
        _INSTRUMENTS,
        _FIGURES,
        _EQUIPMENT,
        _INCIDENTS,
    ),
    "vessel": (_HANDBOOK,),
    "contact": (_HANDBOOK,),
    "scope or procedure": (_HANDBOOK, _PROCEDURES),
    "topic": (_QUESTIONS,),
    "assessment": ("quizzes/assessments",),
}
"""Kind of id -> the files, or the folders of files named after the id, that may hold it."""
