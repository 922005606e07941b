"""What must lie under water while it is boiled, and what may float."""

from __future__ import annotations

from basinside.model.instrument import Instrument
from basinside.render.views.spot import Spot
from basinside.render.wording import _, listed


def floats(spot: Spot) -> tuple[Instrument, ...]:
    """Return the instruments whose parts may float while they are boiled here."""
    content = spot.desk.content
    boiled = {
        whole.procedure.instrument
        for whole in spot.desk.derived.procedures.values()
        if whole.route is not None and whole.route.kind == "boiling"
    }
    return tuple(
        each
        for name, each in content.instruments.items()
        if name in boiled and each.immersion and each.immersion.boiling == "floating allowed"
    )


def under_words(spot: Spot) -> str:
    """Return what must be under water in the pot, and what may float."""
    may = [each.name[:1].lower() + each.name[1:] for each in floats(spot)]
    if not may:
        return _("every part, all the time.")
    return _("every part, all the time. These may float: {names}.").format(names=listed(may))
