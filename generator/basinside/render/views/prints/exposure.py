"""The exposure card: the first minute, and whom to ring, where the work is done."""

from __future__ import annotations

from typing import Final

from basinside.model.equipment import Incident
from basinside.model.handbook import Contact
from basinside.render.view_types import Prose, plain
from basinside.render.view_types.prints import ExposureView, FirstMinuteView, SheetView
from basinside.render.views.prints.frame import (
    foot,
    notices,
    paper_prose,
    print_hint,
    unlinked,
)
from basinside.render.views.spot import Spot, fact
from basinside.render.wording import _, listed, sentence

FREE_MM: Final = 250.0
"""The height under the title and above the foot of the sheet."""
LETTERS_A_LINE, LINE_MM = 33, 5.9  # of a column, at 14 pt
NAME_LETTERS, NAME_MM = 26, 6.3  # of a column, at 16 pt and bold
RING_LETTERS, RING_MM = 72, 6.6  # of the whole width, at 15 pt
MORE_LETTERS, MORE_MM = 95, 4.8  # of the whole width, at 11 pt
GAP_MM: Final = 5.0
UNEVEN_MM: Final = 8.0
"""How much shorter than the other one column may be."""


def exposure_card_view(spot: Spot) -> SheetView:
    """Return the card of what hurts staff; the incidents that are to be told soonest, in order."""
    handbook = spot.desk.content.handbook
    soonest = _soonest(spot)
    contacts = handbook.contacts if handbook else ()
    shown = _that_fit(spot, soonest, contacts)
    rest = [
        each.name[:1].lower() + each.name[1:]
        for each in soonest
        if all(each is not one for one in shown)
    ]
    asked = {each.contact for each in shown}
    return SheetView(
        kind="exposure",
        title=_("Hurt at work: the first minute"),
        lead=plain(_("Do this now. Then ring, by day or by night.")),
        hint=print_hint(),
        notices=notices(spot),
        foot=foot(spot, "exposure-card", ring="exposure"),
        exposure=ExposureView(
            ring_heading=_("Ring at once"),
            ring=tuple(
                fact(
                    sentence(each.contact.replace("-", " ")),
                    _("{who}. By day: {day}. By night: {night}.").format(
                        who=sentence(each.who), day=each.day, night=each.night
                    ),
                )
                for each in contacts
                if each.contact in asked
            ),
            happened=tuple(
                FirstMinuteView(
                    name=each.name,
                    text=paper_prose(spot, each.first_minute),
                    wait=unlinked(spot.value_prose(each.wait)),
                )
                for each in shown
            ),
            more=plain(
                _("In the handbook, under “Something went wrong”: {rest}.").format(
                    rest=listed(rest)
                )
            )
            if rest
            else (),
        ),
    )


def _soonest(spot: Spot) -> list[Incident]:
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


def _that_fit(
    spot: Spot, incidents: list[Incident], contacts: tuple[Contact, ...]
) -> list[Incident]:
    """Return those the card has room for; the first contacts are rung before the others."""
    rank = {each.contact: n for n, each in enumerate(contacts)}
    rest = sum(len(each.name) + 2 for each in incidents)
    more = MORE_MM * (1 + rest // MORE_LETTERS)
    room = 2 * (FREE_MM - more - UNEVEN_MM - NAME_MM - GAP_MM)
    rung: set[str | None] = set()
    chosen: list[Incident] = []
    for each in sorted(incidents, key=lambda one: rank.get(one.contact or "", len(rank))):
        ring = 0 if each.contact in rung else 2 * 2 * RING_MM
        height = _height_mm(spot, each) + ring
        if height <= room or not chosen:
            room -= height
            rung.add(each.contact)
            chosen.append(each)
    return [each for each in incidents if any(each is one for one in chosen)]


def _height_mm(spot: Spot, incident: Incident) -> float:
    words: Prose = (*spot.prose(incident.first_minute), *spot.value_prose(incident.wait))
    letters = sum(len(span.text) for span in words) + (8 if incident.wait else 0)
    return (
        GAP_MM
        + NAME_MM * -(-len(incident.name) // NAME_LETTERS)
        + LINE_MM * -(-letters // LETTERS_A_LINE)
    )
