"""What a wall chart says beside its steps: what is worn at which of them, and whom to ring."""

from __future__ import annotations

from collections.abc import Iterable

from basinside.model.content import Content
from basinside.model.derived import WholeProcedure
from basinside.model.words import Worn


def worn_at(whole: WholeProcedure) -> tuple[tuple[Worn, str], ...]:
    """Return all that is worn, in the order in which it is first asked for, with its steps."""
    found: dict[Worn, list[int]] = {}
    for placed in whole.steps:
        for each in placed.wear:
            found.setdefault(each, []).append(placed.number)
    return tuple((each, runs(numbers)) for each, numbers in found.items())


def runs(numbers: Iterable[int]) -> str:
    """Return rising numbers as people write them: ``1–3, 7, 9–12``."""
    spans: list[list[int]] = []
    for each in numbers:
        if spans and spans[-1][1] + 1 == each:
            spans[-1][1] = each
        else:
            spans.append([each, each])
    return ", ".join(str(a) if a == b else f"{a}–{b}" for a, b in spans)


def chemical_contact(content: Content, whole: WholeProcedure) -> str:
    """Return whom to ring after a splash of a chemical that the steps use; empty without one.

    It is the contact of the first accident that the first aid of the chemical names.
    """
    for placed in whole.steps:
        for name in placed.agent.first_aid if placed.agent else ():
            incident = content.incidents.get(name)
            if incident is not None and incident.contact:
                return incident.contact
    return ""
