"""Every waiver that an author wrote, with the entry it is written at."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from basinside.model.content import Content
from basinside.model.entry import Waivable, Waiver


class Waived(NamedTuple):
    """A waiver and the entry that has it.

    ``within`` is the instrument of a part and the procedure of a step; ``sealed`` says that the
    entry is a question of an assessment, which no page may name.
    """

    waiver: Waiver
    owner: Waivable
    within: Waivable | None = None
    sealed: bool = False


def waived(content: Content) -> tuple[Waived, ...]:
    """Return every waiver, in the order of the kinds of entry.

    A variant shares what it does not write itself with its sibling, so that a waiver at a shared
    part is named once.
    """
    found: dict[tuple[str, tuple[str | int, ...]], Waived] = {}
    for owner, within, sealed in _entries(content):
        for waiver in owner.waive:
            place = waiver.place
            found.setdefault((place.file, place.path), Waived(waiver, owner, within, sealed))
    return tuple(found.values())


def _entries(content: Content) -> Iterator[tuple[Waivable, Waivable | None, bool]]:
    """Yield each entry that can have waivers, what it stands in, and whether it is sealed."""
    for each in _alone(content):
        yield each, None, False
    for instrument in content.instruments.values():
        yield instrument, None, False
        for part in instrument.parts:
            yield part, instrument, False
    for procedure in content.procedures.values():
        yield procedure, None, False
        for _stage, step in procedure.steps:
            yield step, procedure, False
    for asked in content.items():
        yield asked.item, None, asked.pool != "practice"
    for counted in (content.assessments, content.observations):
        for each in counted.values():
            yield each, None, False


def _alone(content: Content) -> Iterator[Waivable]:
    if content.handbook is not None:
        yield content.handbook
    yield from content.sources.values()
    yield from content.equipment.values()
    yield from content.figures.values()
    yield from content.agents.values()
    yield from content.routes.values()
    yield from content.incidents.values()
