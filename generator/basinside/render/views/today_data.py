"""What the page of today is ticked against: the derived plan, with the words beside each id."""

from __future__ import annotations

from typing import Any, Final

from basinside.model.derived import RouteVerdict
from basinside.model.shift import NeedGroup, ShiftBath, ShiftInstrument, ShiftWay
from basinside.render.view_types import Prose, SpanView, plain
from basinside.render.views.decisions import by_whom
from basinside.render.views.routes import reasons_by_part, what_would_do
from basinside.render.views.spot import Spot, ended, state
from basinside.render.views.titles import procedure_title
from basinside.render.views.today import need_name, no_procedure, no_rule, vessel_name
from basinside.render.views.ways import vessel_words
from basinside.render.wording import _, listed, sentence

SHIFT_HOURS: Final = 12
"""How long ticks hold at most: our own cap, the longest shift that is usual."""


def today_data(spot: Spot) -> dict[str, Any]:
    """Return vessels, needs, baths and instruments with their ways, as the page evaluates them."""
    shift = spot.desk.derived.shift
    used = {vessel for each in shift.instruments for way in each.ways for vessel in way.vessels}
    return {
        "hours": SHIFT_HOURS,
        "vessels": [
            {"id": f"vessel/{each}", "name": sentence(vessel_name(spot, each))}
            for each in spot.desk.derived.vessels
            if each in used
        ],
        "unfit": [_unfit(spot, each) for each in spot.desk.derived.vessels if each not in used],
        "groups": _groups(spot),
        "baths": [_bath(spot, each) for each in shift.baths],
        "instruments": [_instrument(spot, each) for each in shift.instruments],
    }


def _unfit(spot: Spot, vessel: str) -> dict[str, Any]:
    """Return a vessel that no way here can use, and why, where that is known."""
    content, reach = spot.desk.content, spot.desk.derived.vessels[vessel]
    has = content.handbook.clinic.has if content.handbook else ()
    why: Prose = ()
    for route in (content.routes[name] for name in has if name in content.routes):
        figure = content.figures.get(route.temperature.figure) if route.temperature else None
        if route.kind == "steam" and figure and route.temperature and "steam" in reach.vessel.kind:
            wanted = spot.value(route.temperature.figure, figure)
            said = vessel_words(spot, reach, wanted, float(figure.value.base))
            why = (*plain(_("{way}: ").format(way=route.name)), *said)
            break
    return {"name": sentence(vessel_name(spot, vessel)), "why": script_prose(why)}


def _groups(spot: Spot) -> list[dict[str, Any]]:
    groups: dict[str, list[dict[str, str]]] = {}
    for need in spot.desk.derived.shift.needs:
        groups.setdefault(need.group, []).append(
            {"id": need.id, "name": sentence(need_name(spot, need.id))}
        )
    return [{"name": group_words(name), "needs": needs} for name, needs in groups.items()]


def group_words(group: NeedGroup | str) -> str:
    """Return the heading of a group of needs."""
    return {
        "heat": _("Heat"),
        "water": _("Water"),
        "protection": _("Protection"),
        "strip or indicator": _("Strips and indicators"),
        "wrapping": _("Wrapping"),
        "container": _("Containers"),
        "brush or tool": _("Brushes and tools"),
        "chemical": _("Chemicals"),
    }.get(group, _("Other things"))


def _bath(spot: Spot, bath: ShiftBath) -> dict[str, Any]:
    life = bath.agent.life if bath.agent else None
    figure = spot.desk.content.figures.get(life.figure) if life else None
    return {
        "route": bath.route.route,
        "name": bath.route.name,
        "days": bath.days,
        "life": figure.value.text() if figure else "",
        "short": bath.within_a_day,
        "strip": bath.strip,
        "least": bath.least.numeral() if bath.least else None,
        "heat": bath.least.text() if bath.least else "",
        "makes": [
            _link(spot, each.procedure, procedure_title(spot.desk.whole(each.procedure)))
            for each in bath.made_by
        ],
    }


def _link(spot: Spot, procedure: str, text: str) -> dict[str, str]:
    return {"text": text, "href": spot.link(f"procedures/{procedure}.html")}


def _instrument(spot: Spot, shown: ShiftInstrument) -> dict[str, Any]:
    instrument = shown.instrument
    return {
        "instrument": instrument.instrument,
        "name": instrument.name,
        "href": spot.link(f"instruments/{instrument.instrument}.html"),
        "needed": spot.desk.instrument(instrument).highest,
        "parts": {part.part: part.shown_name for part in instrument.parts},
        "ways": [_way(spot, shown, way) for way in shown.ways],
        "refused": [
            _refused(spot, verdict)
            for verdict in spot.desk.verdicts(instrument)
            if all(way.route is not verdict.route for way in shown.ways)
        ],
        "instead": script_prose(what_would_do(spot, instrument)),
        "emergency": [
            {"when": state(each.when), "do": script_prose(spot.prose(each.do)), "by": by_whom(each)}
            for each in shown.emergency
        ],
        "ring": "" if shown.emergency else no_rule(spot),
    }


def _way(spot: Spot, shown: ShiftInstrument, way: ShiftWay) -> dict[str, Any]:
    whole = spot.desk.whole(way.procedure.procedure)
    return {
        "procedure": way.procedure.procedure,
        "route": way.route.route,
        "name": way.route.name,
        "title": procedure_title(whole),
        "href": spot.link(f"procedures/{way.procedure.procedure}.html"),
        "level": whole.level or way.route.level,
        "minutes": way.minutes,
        "about": whole.about.text(),
        "parts": [part.part for part in way.parts],
        "for": ""
        if len(way.parts) == len(shown.instrument.parts)
        else listed([part.shown_name for part in way.parts]),
        "needs": list(way.needs),
        "vessels": [f"vessel/{each}" for each in way.vessels],
        "bath": way.bath,
    }


def _refused(spot: Spot, verdict: RouteVerdict) -> dict[str, Any]:
    """Return a route that is never open for an instrument: part, property and source of each."""
    rows = [
        [sentence(parts) or _("This instrument"), ended(what), source]
        for parts, what, source in reasons_by_part(spot, verdict)
    ]
    return {
        "name": verdict.route.name,
        "rows": rows or [[_("This instrument"), ended(no_procedure()), ""]],
    }


def script_prose(prose: Prose) -> list[Any]:
    """Return a sentence for a script: text as it is, a value or a link with its address."""
    return [_span(span) for span in prose]


def _span(span: SpanView) -> Any:
    if span.kind == "text" and not span.href:
        return span.text
    shown = {"text": span.text}
    if span.kind == "value":
        shown["value"] = span.machine
    if span.href:
        shown["href"] = span.href
    return shown
