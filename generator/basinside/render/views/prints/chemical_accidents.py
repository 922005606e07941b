"""The card of chemical accidents: what the first aid of the clinic's chemicals names, in full."""

from __future__ import annotations

from basinside.render.view_types import plain
from basinside.render.view_types.prints import ExposureView, SheetView
from basinside.render.views.prints.accident_room import first_minute
from basinside.render.views.prints.exposure import ring_facts, ring_heading
from basinside.render.views.prints.frame import foot, notices, print_hint
from basinside.render.views.prints.which_accidents import (
    chemical_accidents,
    contacts_of,
    on_chemical_card,
)
from basinside.render.views.spot import Spot
from basinside.render.wording import _, listed

KIND = "chemical-accident-card"


def chemical_accident_view(spot: Spot) -> SheetView:
    """Return the card that hangs where chemicals are used."""
    asked, shown = chemical_accidents(spot), on_chemical_card(spot)
    rest = [
        each.name[:1].lower() + each.name[1:]
        for each in asked
        if all(each is not one for one in shown)
    ]
    return SheetView(
        kind="exposure",
        title=_("Accidents with chemicals"),
        lead=plain(_("Do this now. Then ring, by day or by night.")),
        hint=print_hint(),
        notices=notices(spot),
        foot=foot(spot, KIND, ring="chemical-or-burn"),
        exposure=ExposureView(
            ring_heading=ring_heading(spot, shown),
            ring=ring_facts(contacts_of(spot), shown),
            happened=tuple(first_minute(spot, each, whole=True) for each in shown),
            more=plain(
                _("In the handbook, under “Something went wrong”: {rest}.").format(
                    rest=listed(rest)
                )
            )
            if rest
            else (),
        ),
    )
