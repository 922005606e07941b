"""The exposure card: the first minute, and whom to ring, where the work is done."""

from __future__ import annotations

from basinside.model.equipment import Incident
from basinside.model.handbook import Contact
from basinside.render.view_types import FactView, plain
from basinside.render.view_types.prints import ExposureView, SheetView
from basinside.render.views.prints.accident_room import first_minute
from basinside.render.views.prints.frame import foot, notices, print_hint
from basinside.render.views.prints.which_accidents import (
    contacts_of,
    on_chemical_card,
    on_exposure_card,
    soonest,
)
from basinside.render.views.spot import Spot, fact
from basinside.render.wording import _, listed, sentence


def exposure_card_view(spot: Spot) -> SheetView:
    """Return the card of what hurts staff; the incidents that are to be told soonest, in order."""
    shown = on_exposure_card(spot)
    chemical = on_chemical_card(spot)
    rest = _without(soonest(spot), shown)
    more = [
        template.format(rest=listed([each.name[:1].lower() + each.name[1:] for each in these]))
        for template, these in (
            (_("On the card of chemical accidents: {rest}."), _both(rest, chemical)),
            (_("In the handbook, under “Something went wrong”: {rest}."), _without(rest, chemical)),
        )
        if these
    ]
    return SheetView(
        kind="exposure",
        title=_("Hurt at work: the first minute"),
        lead=plain(_("Do this now. Then ring, by day or by night.")),
        hint=print_hint(),
        notices=notices(spot),
        foot=foot(spot, "exposure-card", ring="exposure"),
        exposure=ExposureView(
            ring_heading=ring_heading(spot, shown),
            ring=ring_facts(contacts_of(spot), shown),
            happened=tuple(first_minute(spot, each) for each in shown),
            more=plain(" ".join(more)) if more else (),
        ),
    )


def ring_heading(spot: Spot, shown: list[Incident]) -> str:
    """Return how soon to ring: at once, and when it is too late."""
    timed = [
        figure.value
        for each in shown
        if each.within and (figure := spot.desk.content.figures.get(each.within.figure))
    ]
    if not timed:
        return _("Ring at once")
    soonest = min(timed, key=lambda value: value.base)
    return _("Ring at once, within {time} at the latest").format(time=soonest.text())


def ring_facts(contacts: tuple[Contact, ...], shown: list[Incident]) -> tuple[FactView, ...]:
    """Return whom to ring for what a card shows."""
    asked = {each.contact for each in shown}
    return tuple(
        fact(
            sentence(each.contact.replace("-", " ")),
            _("{who}. By day: {day}. By night: {night}.").format(
                who=sentence(each.who), day=each.day, night=each.night
            ),
        )
        for each in contacts
        if each.contact in asked
    )


def _without(these: list[Incident], others: list[Incident]) -> list[Incident]:
    return [each for each in these if all(each is not one for one in others)]


def _both(these: list[Incident], others: list[Incident]) -> list[Incident]:
    return [each for each in these if any(each is one for one in others)]
