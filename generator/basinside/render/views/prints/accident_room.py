"""Which accidents a card has room for: two columns under the people to ring."""

from __future__ import annotations

from typing import Final

from basinside.model.equipment import Incident
from basinside.model.handbook import Contact
from basinside.render.view_types import Prose
from basinside.render.view_types.prints import FirstMinuteView
from basinside.render.views.prints.frame import joined, paper_prose, unlinked
from basinside.render.views.spot import Spot
from basinside.render.wording import sentence

FREE_MM: Final = 250.0
"""The height under the title and above the foot of the sheet."""
LETTERS_A_LINE, LINE_MM = 33, 5.9  # of a column, at 14 pt
THEN_LETTERS, THEN_MM = 42, 4.6  # of a column, at 11 pt
NAME_LETTERS, NAME_MM = 26, 6.3  # of a column, at 16 pt and bold
RING_LETTERS, RING_MM = 72, 6.6  # of the whole width, at 15 pt
MORE_LETTERS, MORE_MM = 95, 4.8  # of the whole width, at 11 pt
GAP_MM: Final = 5.0
UNEVEN_MM: Final = 8.0
"""How much shorter than the other one column may be."""


def that_fit(
    spot: Spot,
    incidents: list[Incident],
    contacts: tuple[Contact, ...],
    *,
    rank: dict[str, int] | None = None,
    whole: bool = False,
) -> list[Incident]:
    """Return those that a card has room for, in their own order.

    Args:
        spot: the page.
        incidents: what may stand on it.
        contacts: the people to ring; those of the first contacts come before the others.
        rank: which incidents have the first claim, by id; by their contacts when not given.
        whole: whether what comes after the first minute stands there too.
    """
    called = {each.contact: n for n, each in enumerate(contacts)}
    rest = sum(len(each.name) + 2 for each in incidents)
    more = MORE_MM * (1 + rest // MORE_LETTERS)
    room = 2 * (FREE_MM - more - UNEVEN_MM - NAME_MM - GAP_MM)
    rung: set[str | None] = set()
    chosen: list[Incident] = []

    def claim(one: Incident) -> int:
        if rank is not None:
            return rank.get(one.incident, len(rank))
        return called.get(one.contact or "", len(called))

    for each in sorted(incidents, key=claim):
        ring = 0 if each.contact in rung else 2 * 2 * RING_MM
        height = _height_mm(spot, each, whole=whole) + ring
        if height <= room or not chosen:
            room -= height
            rung.add(each.contact)
            chosen.append(each)
    return [each for each in incidents if any(each is one for one in chosen)]


def first_minute(spot: Spot, incident: Incident, *, whole: bool = False) -> FirstMinuteView:
    """Return an accident for a card; ``whole`` with what comes after its first minute."""
    return FirstMinuteView(
        name=incident.name,
        text=paper_prose(spot, incident.first_minute),
        wait=_wait(spot, incident),
        then=paper_prose(spot, incident.then) if whole else (),
    )


def _wait(spot: Spot, incident: Incident) -> Prose:
    """Return how long, and of what: a time alone is read as that of the sentence before it."""
    figure = spot.desk.content.figures.get(incident.wait.figure) if incident.wait else None
    if figure is None:
        return ()
    return joined(f"{sentence(figure.is_)}: ", unlinked(spot.value_prose(incident.wait)), ".")


def _height_mm(spot: Spot, incident: Incident, *, whole: bool) -> float:
    first = (*spot.prose(incident.first_minute), *_wait(spot, incident))
    letters = sum(len(span.text) for span in first) + (8 if incident.wait else 0)
    then = sum(len(span.text) for span in spot.prose(incident.then)) if whole else 0
    return (
        GAP_MM
        + NAME_MM * -(-len(incident.name) // NAME_LETTERS)
        + LINE_MM * -(-letters // LETTERS_A_LINE)
        + THEN_MM * -(-then // THEN_LETTERS)
    )
