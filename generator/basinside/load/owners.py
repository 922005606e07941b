"""The entries that have an id, what stands below each, and which of them a place belongs to."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, Final, NamedTuple

from pydantic import BaseModel

from basinside.model.content import Content
from basinside.model.entry import Entry
from basinside.model.handbook import Contact, Handbook, Vessel
from basinside.model.instrument import Instrument, Part
from basinside.model.procedure import Procedure, Step
from basinside.model.quiz import Item, Observation, ObservationLine, QuestionFile, Scenario
from basinside.model.use import Owner
from basinside.problem import Place

Role = tuple[str | int, ...]

_OWN: Final = (Step, Part, Item, Scenario, ObservationLine, Vessel, Contact)
"""What stands inside another entry and has an id of its own."""


class Leaf(NamedTuple):
    """A text that an entry holds, the keys that lead to it there, and where it stands."""

    owner: Owner
    role: Role
    text: str
    place: Place


class Below(NamedTuple):
    """A model inside an entry, and the keys that lead to it there."""

    owner: Owner
    role: Role
    model: Entry


def owned(content: Content) -> Iterator[tuple[Owner, Entry]]:
    """Yield every entry that has an id, those inside another after it."""
    if content.handbook is not None:
        yield Owner("handbook", content.handbook.handbook), content.handbook
        yield from _inside(content.handbook)
    for kind, entries in (
        ("value", content.figures),
        ("choice", content.choices),
        ("source", content.sources),
        ("agent", content.agents),
        ("route", content.routes),
        ("equipment", content.equipment),
        ("incident", content.incidents),
        ("word", content.words),
        ("instrument", content.instruments),
        ("procedure", content.procedures),
        ("assessment", content.assessments),
        ("observation", content.observations),
        ("standard", content.standards),
    ):
        for name, entry in entries.items():
            yield Owner(kind, name), entry
            yield from _inside(entry)
    for questions in content.questions:
        yield Owner("topic", questions.topic), questions
        yield from _inside(questions)


def _inside(entry: Any) -> Iterator[tuple[Owner, Entry]]:
    if isinstance(entry, Handbook):
        for contact in entry.contacts:
            yield Owner("contact", contact.contact), contact
        for vessel in entry.clinic.vessels:
            yield Owner("vessel", vessel.vessel), vessel
    elif isinstance(entry, Instrument):
        for part in entry.parts:
            yield Owner("part", f"{entry.instrument}/{part.part}"), part
    elif isinstance(entry, Procedure):
        for _, step in entry.steps:
            yield Owner("step", f"{entry.procedure}/{step.step}"), step
    elif isinstance(entry, Observation):
        for line in entry.lines:
            yield Owner("line", f"{entry.observation}/{line.line}"), line
    elif isinstance(entry, QuestionFile):
        for each in entry.items:
            if isinstance(each, Scenario):
                yield Owner("scenario", each.scenario), each
            for item in each.items if isinstance(each, Scenario) else (each,):
                yield Owner("item", item.item), item


def models_below(owner: Owner, entry: Entry, role: Role = ()) -> Iterator[Below]:
    """Yield an entry and every model inside it, but what has an id of its own."""
    yield Below(owner, role, entry)
    for more, value in _values(entry):
        if isinstance(value, Entry) and not isinstance(value, _OWN):
            yield from models_below(owner, value, (*role, *more))


def leaves(owner: Owner, entry: Entry) -> Iterator[Leaf]:
    """Yield every text of an entry."""
    for below in models_below(owner, entry):
        for more, value in _values(below.model):
            if isinstance(value, str):
                place = below.model.place.at(*more)
                yield Leaf(owner, (*below.role, *more), value, place)


def _values(model: BaseModel) -> Iterator[tuple[Role, Any]]:
    """Yield what a model holds with the keys that an author writes, lists and mappings opened."""
    for name, field in type(model).model_fields.items():
        if name != "place":
            yield from _opened((field.alias or name,), getattr(model, name))


def _opened(role: Role, value: Any) -> Iterator[tuple[Role, Any]]:
    if isinstance(value, tuple) and not isinstance(value, Place):
        for n, each in enumerate(value):
            yield from _opened((*role, n), each)
    elif isinstance(value, dict):
        for key, each in value.items():
            yield from _opened((*role, str(key)), each)
    else:
        yield role, value


class Owners:
    """Which entries a place belongs to, and the keys that lead to it in each."""

    def __init__(self, content: Content) -> None:
        self._at: dict[tuple[str, Role], dict[Owner, Role]] = {}
        for owner, entry in owned(content):
            for below in models_below(owner, entry):
                key = (below.model.place.file, below.model.place.path)
                self._at.setdefault(key, {}).setdefault(owner, below.role)

    def of(self, place: Place) -> tuple[tuple[Owner, Role], ...]:
        """Return the entries that hold a place; several where variants share it."""
        for end in range(len(place.path), -1, -1):
            found = self._at.get((place.file, place.path[:end]))
            if found:
                rest = place.path[end:]
                return tuple((owner, (*role, *rest)) for owner, role in found.items())
        return ()
