"""What holds for some parts of an instrument only, and what must never be heated.

The weakest part decides, unless the clinic brings the parts of an instrument back by procedures
of their own. Only then may a way that one part does not stand be used for another.
"""

from __future__ import annotations

from typing import Final

from basinside.model.derived import RouteVerdict
from basinside.model.equipment import Route
from basinside.model.instrument import Instrument, Part
from basinside.render.view_types import FactView
from basinside.render.views.spot import Spot, fact
from basinside.render.wording import _, listed

HOT_KINDS: Final = frozenset({"boiling", "steam", "dry heat"})
"""The kinds of route that work by heat."""


def in_parts(spot: Spot, instrument: Instrument) -> bool:
    """Whether the clinic brings parts of this instrument back by procedures of their own."""
    content = spot.desk.content
    return any(
        content.procedures[name].parts and content.procedures[name].route
        for name in spot.desk.procedures_of(instrument.instrument)
    )


def for_parts(spot: Spot, verdict: RouteVerdict) -> bool:
    """Whether a way may be used here for some parts of an instrument and not for the others."""
    return verdict.partly and in_parts(spot, verdict.instrument)


def _stands_heat(instrument: Instrument, part: Part, route: Route) -> bool | None:
    """Whether a part stands a way by heat; None when nobody says so."""
    stands = part.stands(route.route)
    if stands is False or route.kind != "boiling":
        return stands
    under = part.immersion.boiling if part.immersion else None
    whole = instrument.immersion.boiling if instrument.immersion else None
    return False if (under or whole) == "never" else stands


def never_heated(spot: Spot, instrument: Instrument) -> tuple[Part, ...]:
    """Return the parts that no heat may touch; all of them unless parts go their own ways.

    None when some way by heat is stood by every part, or when nothing is said to be ruined: what
    is only not stated is refused, but is no warning.
    """
    hot = [each for each in spot.desk.content.routes.values() if each.kind in HOT_KINDS]
    if instrument.label == "single use" or not hot:
        return ()
    stood = {
        part.part: [_stands_heat(instrument, part, each) for each in hot]
        for part in instrument.parts
    }
    if any(all(column) for column in zip(*stood.values(), strict=True)):
        return ()
    cold = tuple(
        part
        for part in instrument.parts
        if False in stood[part.part] and True not in stood[part.part]
    )
    if not cold:
        return ()
    return cold if in_parts(spot, instrument) else instrument.parts


def never_heat(spot: Spot, instrument: Instrument) -> FactView | None:
    """Return the sentence that stops somebody from heating an instrument, or some of its parts."""
    parts = never_heated(spot, instrument)
    if not parts:
        return None
    if len(parts) < len(instrument.parts):
        names = listed([each.shown_name for each in parts])
        return fact(
            _("Never heat: {parts}").format(parts=names),
            _("Do not boil or steam them. Heat ruins them."),
        )
    return fact(
        _("Never heat it"),
        _("Do not boil it. Do not steam it. Heat ruins it, and it may then fail."),
    )
