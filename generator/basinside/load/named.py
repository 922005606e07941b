"""Which ids each entry names outside its sentences, and where."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import lru_cache
from typing import Any, Final, NamedTuple, get_args

from pydantic import BaseModel

from basinside.model.entry import FigureRef
from basinside.model.equipment import Agent, EquipmentFile, IncidentFile, Route
from basinside.model.figure import FigureFile
from basinside.model.handbook import Handbook
from basinside.model.instrument import Instrument
from basinside.model.item_kinds import NumberFrom
from basinside.model.procedure import Procedure, Step
from basinside.model.quiz import Assessment, Item, Observation, QuestionFile, Scenario
from basinside.model.standard import Standard
from basinside.model.words import PRINTS_OF
from basinside.problem import Place


class Named(NamedTuple):
    """An id that an entry names: of which kind, which, and where."""

    kind: str
    id: str
    place: Place


def named_in(entry: object) -> Iterator[Named]:
    """Yield every id that what was read of one file names outside prose."""
    for kind, find in _FINDERS:
        if isinstance(entry, kind):
            yield from find(entry)


def _figure_file(file: FigureFile) -> Iterator[Named]:
    for figure in file.figures.values():
        yield from _citation(figure.source, figure.place)
        if figure.maker_says:
            yield from _citation(figure.maker_says.source, figure.maker_says.place)
        if figure.worked_out:
            yield from _figures(figure.worked_out)
            place = figure.worked_out.place
            yield from _one("agent", figure.worked_out.of, place, "of")
            yield from _one("vessel", figure.worked_out.reached_by, place, "reached_by")
    for choice in file.choices.values():
        yield from _citation(choice.source, choice.place)
        for n, other in enumerate(choice.not_chosen):
            yield from _citation(other.source, choice.place.at("not_chosen", n))


def _agent(agent: Agent) -> Iterator[Named]:
    yield from _figures(agent)
    if agent.strength_check:
        yield from _figures(agent.strength_check)
    if agent.product and agent.product.label_says:
        yield from _figures(agent.product.label_says)
    yield from _many("incident", agent.first_aid, agent.place, "first_aid")


def _route(route: Route) -> Iterator[Named]:
    yield from _figures(route)
    yield from _one("agent", route.agent, route.place, "agent")
    yield from _many("equipment", route.needs, route.place, "needs")


def _equipment(file: EquipmentFile) -> Iterator[Named]:
    for tool in file.equipment.values():
        yield from _many("agent", tool.only_for, tool.place, "only_for")


def _incidents(file: IncidentFile) -> Iterator[Named]:
    for incident in file.incidents:
        yield from _figures(incident)
        yield from _one("contact", incident.contact, incident.place, "contact")


def _questions(file: QuestionFile) -> Iterator[Named]:
    for entry in file.items:
        if isinstance(entry, Scenario):
            yield from _built_on(entry)
        for item in entry.items if isinstance(entry, Scenario) else (entry,):
            yield from _built_on(item)
            yield from _item(item)


def _built_on(entry: Item | Scenario) -> Iterator[Named]:
    if entry.built_on:
        yield from _citation(entry.built_on.source, entry.built_on.place)


def _assessment(assessment: Assessment) -> Iterator[Named]:
    place = assessment.blueprint.place.at("topics")
    yield from _many_keys("topic", assessment.blueprint.topics, place)


def _observation(observation: Observation) -> Iterator[Named]:
    yield Named("procedure", observation.observation, observation.place.at("observation"))


def _standard(standard: Standard) -> Iterator[Named]:
    yield Named("assessment", standard.standard, standard.place.at("standard"))
    for judge in standard.judges:
        yield from _many_keys("item", judge.ratings, judge.place, "ratings")


def _handbook(handbook: Handbook) -> Iterator[Named]:
    clinic = handbook.clinic
    yield from _many("route", clinic.has, clinic.place, "has")
    for name in ("cases_per_year", "ready_reserve"):
        yield from _many_keys("instrument", getattr(clinic, name), clinic.place, name)
    for rule in clinic.emergency:
        yield from _many("instrument", rule.for_, rule.place, "for")
    for flush in clinic.eye_flush:
        yield Named("equipment", flush.with_, flush.place.at("with"))
    if clinic.spore_test:
        yield from _figures(clinic.spore_test)
    for posted in handbook.posted:
        if posted.print in PRINTS_OF:
            yield from _one(PRINTS_OF[posted.print], posted.of, posted.place, "of")
    for scope, procedures in handbook.scopes.items():
        yield from _many("procedure", procedures, handbook.place, "scopes", scope)
    for line in handbook.policy:
        yield from _many("scope or procedure", line.scope, line.place, "scope")
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
            yield from _many_keys("route", part.survives.routes, part.survives.place, "routes")
        if part.level_decided:
            yield from _citation(part.level_decided.source, part.level_decided.place)
        if part.lubricate:
            yield Named("agent", part.lubricate.with_, part.lubricate.place.at("with"))
    moist = instrument.keep_moist_with
    if moist:
        yield from _many("chemical or family", moist.use, moist.place, "use")
        yield from _many("chemical or family", moist.never, moist.place, "never")
    name = instrument.instrument
    yield from _parts(name, instrument.take_apart, place, "take_apart")
    for used in instrument.at_use:
        yield Named("part", f"{name}/{used}", place.at("at_use", used))
    for line in instrument.function_test:
        yield from _figures(line)
        yield from _parts(name, line.tests, line.place, "tests")
    yield from _figures(instrument)
    if instrument.use_limit:
        yield from _figures(instrument.use_limit)


def _procedure(procedure: Procedure) -> Iterator[Named]:
    place = procedure.place
    instrument = procedure.instrument
    yield from _one("instrument", instrument, place, "instrument")
    yield from _one("route", procedure.route, place, "route")
    yield from _one("vessel", procedure.vessel, place, "vessel")
    if instrument:
        yield from _parts(instrument, procedure.parts, place)
    for _, step in procedure.steps:
        yield from _step(step)
        if step.parts and instrument:
            yield from _parts(instrument, step.parts, step.place)


def _step(step: Step) -> Iterator[Named]:
    place = step.place
    yield from _figures(step)
    if step.hold and step.hold.no_longer_than:
        yield from _figures(step.hold)
    # Most steps name few of these, and there are many steps: nothing is begun for what is absent.
    if step.agent:
        yield Named("agent", step.agent, place.at("agent"))
    if step.in_:
        yield Named("equipment", step.in_, place.at("in"))
    if step.with_:
        yield from _many("equipment", step.with_, place, "with")
    if step.needs:
        yield from _many("equipment", step.needs, place, "needs")
    if step.see:
        yield Named("procedure", step.see, place.at("see"))
    if step.choice:
        yield Named("choice", step.choice, place.at("choice"))


def _item(item: Item) -> Iterator[Named]:
    yield from _many("step or line", item.about, item.place, "about")
    if item.rests_on:
        rest = item.rests_on
        yield from _many_keys("value", rest.values, rest.place, "values")
        yield from _many("step", rest.steps, rest.place, "steps")
    for entry in item.entries:
        yield from _one("step", entry.step, entry.place, "step")
    if item.number:
        for written in (item.number.right, *(each.number for each in item.number.mistakes)):
            if isinstance(written, NumberFrom):
                yield Named("value", written.figure, written.place.at("figure"))


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


def _one(kind: str, value: str | None, place: Place, key: str) -> Iterator[Named]:
    if value is not None:
        yield Named(kind, value, place.at(key))


def _many(kind: str, values: tuple[str, ...], place: Place, *keys: str) -> Iterator[Named]:
    for n, value in enumerate(values):
        yield Named(kind, value, place.at(*keys, n))


def _parts(
    instrument: str, parts: tuple[str, ...], place: Place, key: str = "parts"
) -> Iterator[Named]:
    for n, part in enumerate(parts):
        yield Named("part", f"{instrument}/{part}", place.at(key, n))


def _many_keys(kind: str, values: Any, place: Place, *keys: str) -> Iterator[Named]:
    for value in values:
        yield Named(kind, value, place.at(*keys, value))


_FINDERS: Final[tuple[tuple[type, Callable[[Any], Iterator[Named]]], ...]] = (
    (FigureFile, _figure_file),
    (Agent, _agent),
    (Route, _route),
    (EquipmentFile, _equipment),
    (IncidentFile, _incidents),
    (Instrument, _instrument),
    (Procedure, _procedure),
    (QuestionFile, _questions),
    (Assessment, _assessment),
    (Observation, _observation),
    (Standard, _standard),
    (Handbook, _handbook),
)
