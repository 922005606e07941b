"""Which routes are permitted for each instrument: verdict, level, and every reason against.

Surviving a route and reaching a level by it are two facts with two sources; both are needed, and
the weakest part present decides. A route that nobody states is refused as not stated.
"""

from __future__ import annotations

from basinside.derive.levels import needed_level
from basinside.derive.vessels import clinic_vessels
from basinside.model.content import Content
from basinside.model.derived import Reason, RouteVerdict, VesselReach
from basinside.model.equipment import Route
from basinside.model.instrument import Instrument, Part
from basinside.model.words import CareLevel, at_least, lower_of
from basinside.units import Kind


def reached_level(instrument: Instrument, route: Route) -> CareLevel:
    """Return the level a route gives this instrument: the lower of what both say."""
    evidence = instrument.reaches.get(route.route)
    return lower_of(route.level, evidence.level) if evidence else route.level


def judge_route(
    content: Content,
    instrument: Instrument,
    route: Route,
    parts: tuple[Part, ...] | None = None,
    vessels: tuple[VesselReach, ...] | None = None,
) -> RouteVerdict:
    """Return the verdict for an instrument, or for some of its parts, on a route."""
    evidence = instrument.reaches.get(route.route)
    level = reached_level(instrument, route)
    against_parts: list[Reason] = []
    fit: list[Part] = []
    against: list[Reason] = []
    if instrument.label == "single use":
        against.append(Reason(kind="single-use"))
    else:
        for part in instrument.parts if parts is None else parts:
            found = _against_part(part, route, level)
            against_parts.extend(found)
            if not found:
                fit.append(part)
        if evidence is None:
            against.append(Reason(kind="no-evidence"))
    fitting, too_cool = _vessels(content, route, vessels)
    if route.kind == "steam" and not fitting:
        if too_cool:
            against.extend(Reason(kind="vessel-too-cool", vessel=each) for each in too_cool)
        else:
            against.append(Reason(kind="no-vessel"))
    return RouteVerdict(
        instrument=instrument,
        route=route,
        level=level,
        reaches=evidence,
        reasons=(*against_parts, *against),
        fit=() if against else tuple(fit),
        vessels=fitting,
    )


def _against_part(part: Part, route: Route, level: CareLevel) -> list[Reason]:
    stands = part.stands(route.route)
    source = part.survives.source if part.survives else ""
    if stands is None:
        return [Reason(kind="part-not-stated", part=part, source=source)]
    if not stands:
        return [Reason(kind="part-not-survive", part=part, source=source)]
    needed = needed_level(part).level
    if not at_least(level, needed):
        return [Reason(kind="level-too-low", part=part, needed=needed, reached=level)]
    return []


def _vessels(
    content: Content, route: Route, vessels: tuple[VesselReach, ...] | None
) -> tuple[tuple[VesselReach, ...], tuple[VesselReach, ...]]:
    """Return the vessels that can do a steam route here, and those that cannot."""
    if route.kind != "steam":
        return (), ()
    figure = content.figures.get(route.temperature.figure) if route.temperature else None
    known = clinic_vessels(content) if vessels is None else vessels
    steam = [each for each in known if "steam" in each.vessel.kind]
    if figure is None or figure.value.kind is not Kind.TEMPERATURE:
        return tuple(steam), ()
    celsius = float(figure.value.base)
    return (
        tuple(each for each in steam if each.reaches(celsius)),
        tuple(each for each in steam if each.reaches(celsius) is False),
    )


def clinic_routes(content: Content) -> tuple[Route, ...]:
    """Return the routes the clinic has, in the order it lists them."""
    handbook = content.handbook
    wanted = handbook.clinic.has if handbook else ()
    return tuple(content.routes[each] for each in wanted if each in content.routes)


def judge_routes(
    content: Content, instrument: Instrument, vessels: tuple[VesselReach, ...] | None = None
) -> tuple[RouteVerdict, ...]:
    """Return the verdict of every route the clinic has for one instrument.

    Args:
        content: the model.
        instrument: the instrument.
        vessels: how hot the clinic's vessels get, for whoever knows it already.
    """
    return tuple(
        judge_route(content, instrument, route, vessels=vessels) for route in clinic_routes(content)
    )
