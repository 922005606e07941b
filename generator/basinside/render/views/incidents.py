"""What to do when something went wrong, and whom to ring."""

from __future__ import annotations

from basinside.model.equipment import Incident
from basinside.render.view_types import (
    FactView,
    IncidentsView,
    IncidentView,
    LinkView,
    Prose,
    plain,
)
from basinside.render.views.spot import Spot, fact, present
from basinside.render.wording import _, sentence


def incidents_view(spot: Spot) -> IncidentsView:
    """Return the page that is read in a hurry."""
    content, contacts = spot.desk.content, contact_facts(spot)
    return IncidentsView(
        title=_("Something went wrong"),
        lead=plain(_("Find what happened. Do the first minute now. Then ring.")),
        jump_label=_("What happened?"),
        jump=(
            *((LinkView(text=_("Whom to ring"), href="#ring"),) if contacts else ()),
            *(
                LinkView(text=each.name, href=f"#{each.incident}")
                for each in content.incidents.values()
            ),
        ),
        incidents=tuple(_incident(spot, each) for each in content.incidents.values()),
        contacts_heading=_("Whom to ring"),
        contacts_anchor="ring",
        contacts=contacts,
    )


def contact_facts(spot: Spot) -> tuple[FactView, ...]:
    """Return the people to ring, by day and by night."""
    handbook = spot.desk.content.handbook
    return tuple(
        fact(
            sentence(each.contact.replace("-", " ")),
            sentence(each.who),
            _("By day: {day}. By night: {night}.").format(day=each.day, night=each.night),
        )
        for each in (handbook.contacts if handbook else ())
    )


def _incident(spot: Spot, incident: Incident) -> IncidentView:
    handbook = spot.desk.content.handbook
    contact = next(
        (
            each
            for each in (handbook.contacts if handbook else ())
            if each.contact == incident.contact
        ),
        None,
    )
    within: Prose = spot.value_prose(incident.within)
    return IncidentView(
        anchor=incident.incident,
        name=incident.name,
        first_word=_("First minute"),
        first_minute=spot.prose(incident.first_minute),
        wait=spot.figure(incident.wait),
        then=fact(_("Then"), spot.prose(incident.then)),
        ring=present(
            fact(
                _("Ring"),
                sentence(contact.who),
                _("By day: {day}. By night: {night}.").format(day=contact.day, night=contact.night),
            )
            if contact
            else None,
            fact(_("How soon"), _how_soon(within)),
        ),
        source=plain(_("Source: {source}").format(source=spot.citation(incident.source)))
        if incident.source
        else (),
    )


def _how_soon(within: Prose) -> Prose:
    """Return when to ring: a time alone is read as leave to wait that long."""
    if not within:
        return ()
    return (*plain(_("at once, within ")), *within, *plain(_(" at the latest")))
