"""What must agree inside one entry once it is read: ids given once, days in their order."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from basinside.load.figure_blocks import figure_blocks
from basinside.load.item_blocks import item_blocks
from basinside.load.standards import rated_alike
from basinside.model.figure import FigureFile
from basinside.model.handbook import Handbook
from basinside.model.instrument import Instrument
from basinside.model.procedure import Procedure
from basinside.model.quiz import Observation, QuestionFile
from basinside.model.standard import Standard
from basinside.problem import Level, Place, Problem


def within(entry: object) -> Iterator[Problem]:
    """Yield what does not agree inside one entry."""
    if isinstance(entry, Procedure):
        yield from _once("step", ((step.step, step.place) for _, step in entry.steps))
        yield from _about_what(entry)
    elif isinstance(entry, Instrument):
        yield from _once("part", ((part.part, part.place) for part in entry.parts))
    elif isinstance(entry, Observation):
        yield from _once("line", ((line.line, line.place) for line in entry.lines))
    elif isinstance(entry, QuestionFile):
        yield from item_blocks(entry)
    elif isinstance(entry, Standard):
        yield from rated_alike(entry)
    elif isinstance(entry, FigureFile):
        yield from figure_blocks(entry)
    elif isinstance(entry, Handbook):
        yield from _once("contact", ((each.contact, each.place) for each in entry.contacts))
        vessels = entry.clinic.vessels
        yield from _once("vessel", ((each.vessel, each.place) for each in vessels))
        if entry.review_by < entry.issued:
            said = f"review_by is {entry.review_by}, before issued, which is {entry.issued}"
            yield _problem(entry.place.at("review_by"), "bad-value", said)


def _about_what(procedure: Procedure) -> Iterator[Problem]:
    """Yield what a procedure lacks to say what it is about."""
    if procedure.route is not None and procedure.instrument is None:
        said = "a procedure with a route names its instrument; this one names none"
        yield _problem(procedure.place.at("route"), "missing-key", said)
    elif procedure.route is None and procedure.title is None:
        said = "a procedure without a route has nothing to be called by; write its title"
        yield _problem(procedure.place.at("procedure"), "missing-key", said)
    if procedure.instrument is None and procedure.parts:
        said = "parts are those of an instrument; this procedure names none"
        yield _problem(procedure.place.at("parts"), "missing-key", said)


def _once(kind: str, named: Iterable[tuple[str, Place]]) -> Iterator[Problem]:
    """Yield a problem for each id that stands a second time."""
    seen: set[str] = set()
    for name, place in named:
        if name in seen:
            said = f"there are two {kind}s “{name}” here; give one an id of its own, or delete it"
            yield _problem(place.at(kind), "repeated-id", said)
        seen.add(name)


def _problem(place: Place, rule: str, message: str) -> Problem:
    return Problem(place=place, rule=rule, level=Level.NEVER, message=message)
