"""Which accidents stand on the exposure card, and which on the card of chemical accidents."""

from __future__ import annotations

from basinside.model.equipment import Incident
from basinside.model.handbook import Contact
from basinside.render.views.chemicals import agents_used
from basinside.render.views.prints.accident_room import that_fit
from basinside.render.views.spot import Spot


def on_exposure_card(spot: Spot) -> list[Incident]:
    """Return the incidents that the exposure card has room for."""
    return that_fit(spot, soonest(spot), contacts_of(spot))


def chemical_accidents(spot: Spot) -> list[Incident]:
    """Return the incidents that the first aid of the chemicals in use names, in page order."""
    named = {name for agent in agents_used(spot) for name in agent.first_aid}
    return [each for name, each in spot.desk.content.incidents.items() if name in named]


def on_chemical_card(spot: Spot) -> list[Incident]:
    """Return the incidents that the card of chemical accidents has room for, in full.

    Those that hurt somebody come first, and of them those that stand on no other card.
    """
    asked = chemical_accidents(spot)
    elsewhere = {each.incident for each in on_exposure_card(spot)}
    first = sorted(asked, key=lambda each: (each.within is None, each.incident in elsewhere))
    rank = {each.incident: n for n, each in enumerate(first)}
    return that_fit(spot, asked, contacts_of(spot), rank=rank, whole=True)


def contacts_of(spot: Spot) -> tuple[Contact, ...]:
    """Return the people to ring, as the handbook orders them."""
    handbook = spot.desk.content.handbook
    return handbook.contacts if handbook else ()


def soonest(spot: Spot) -> list[Incident]:
    """Return the incidents that must be told first, as the handbook orders them."""
    figures = spot.desk.content.figures
    timed = [
        (figures[each.within.figure].value.base, each)
        for each in spot.desk.content.incidents.values()
        if each.within and each.within.figure in figures
    ]
    first = min((within for within, each in timed), default=None)
    found = [each for within, each in timed if within == first]
    return found or list(spot.desk.content.incidents.values())
