"""The ways of reprocessing: what each needs, what it reaches, for which instruments here."""

from __future__ import annotations

from math import floor

from basinside.model.derived import RouteVerdict, VesselReach
from basinside.model.equipment import Route
from basinside.render.view_types import (
    FactView,
    LinkView,
    Prose,
    SpanView,
    WaysView,
    WayView,
    plain,
)
from basinside.render.views.chemicals import chemicals
from basinside.render.views.partly import for_parts
from basinside.render.views.spot import Spot, ended, fact, present
from basinside.render.views.waivers import waiver_views
from basinside.render.wording import _, listed, sentence


def ways_view(spot: Spot) -> WaysView:
    """Return the page of every way of reprocessing that the handbook knows."""
    routes = spot.desk.content.routes.values()
    return WaysView(
        title=_("Ways of reprocessing"),
        lead=plain(
            _(
                "A way is permitted for an instrument when every part stands it, and somebody"
                " says that it reaches the level which the part needs."
            )
        ),
        jump_label=_("On this page"),
        jump=tuple(
            LinkView(text=each.name, href=f"#{each.route}", note=each.level) for each in routes
        ),
        ways=tuple(_way(spot, each) for each in routes),
    )


def _way(spot: Spot, route: Route) -> WayView:
    content = spot.desk.content
    handbook = content.handbook
    here = handbook is not None and route.route in handbook.clinic.has
    verdicts = [
        each
        for instrument in content.instruments.values()
        if instrument.label != "single use"
        for each in spot.desk.verdicts(instrument)
        if each.route.route == route.route
    ]
    allowed, refused = _by_verdict(spot, verdicts)
    return WayView(
        anchor=route.route,
        name=route.name,
        level=_("Reaches: {level}, and not more on any instrument").format(level=route.level),
        note=() if here else plain(_("The clinic does not name it among its ways. Do not use it.")),
        figures=tuple(
            each
            for each in (
                spot.figure(route.hold, _("held this long")),
                spot.figure(route.temperature, _("this hot")),
                spot.figure(route.strength, _("this strong")),
            )
            if each
        ),
        facts=present(
            fact(_("Chemical:"), chemicals(spot, (route.agent,)) if route.agent else ()),
            fact(_("Pack:"), _pack(route)),
        ),
        allowed_heading=_("Permitted for"),
        allowed=allowed,
        refused_heading=_("Refused for"),
        refused=refused,
        vessels_heading=_("Our vessels"),
        vessels=_vessels(spot, route),
        needs_heading=_("Have ready"),
        needs=_needs(spot, route),
        waivers=waiver_views(spot, route.waive),
    )


def _pack(route: Route) -> str:
    if route.wrapped is None:
        return ""
    return _("Wrapped") if route.wrapped else _("Unwrapped")


def _by_verdict(
    spot: Spot, verdicts: list[RouteVerdict]
) -> tuple[tuple[LinkView, ...], tuple[LinkView, ...]]:
    allowed, refused = [], []
    for verdict in verdicts:
        if verdict.permitted:
            allowed.append(_to_instrument(spot, verdict, _("all parts")))
        elif for_parts(spot, verdict):
            fit = listed([each.shown_name for each in verdict.fit])
            allowed.append(_to_instrument(spot, verdict, _("only {parts}").format(parts=fit)))
        else:
            refused.append(_to_instrument(spot, verdict, why_not(verdict)))
    return tuple(allowed), tuple(refused)


def _to_instrument(spot: Spot, verdict: RouteVerdict, note: str) -> LinkView:
    target = f"instruments/{verdict.instrument.instrument}.html#route-{verdict.route.route}"
    return LinkView(text=verdict.instrument.name, href=spot.link(target), note=note)


def why_not(verdict: RouteVerdict) -> str:
    """Return the gravest reason of a refusal, in a few words; the instrument's page has all."""
    kinds = {each.kind for each in verdict.reasons}
    for kind, words in (
        ("part-not-survive", _("does not stand it")),
        ("level-too-low", _("needs more than it gives")),
        ("vessel-too-cool", _("our vessels do not get hot enough")),
        ("no-vessel", _("no vessel for it here")),
        ("part-not-stated", _("not stated by the maker")),
        ("no-evidence", _("nobody states the level it reaches")),
    ):
        if kind in kinds:
            return words
    return _("for one use only")


def _vessels(spot: Spot, route: Route) -> tuple[FactView, ...]:
    if route.kind != "steam":
        return ()
    figure = spot.desk.content.figures.get(route.temperature.figure) if route.temperature else None
    if figure is None or route.temperature is None:
        return ()
    wanted = spot.value(route.temperature.figure, figure)
    return tuple(
        fact(
            sentence(each.vessel.name or each.vessel.vessel.replace("-", " ")),
            vessel_words(spot, each, wanted, float(figure.value.base)),
        )
        for each in spot.desk.derived.vessels.values()
        if "steam" in each.vessel.kind
    )


def vessel_words(spot: Spot, reach: VesselReach, wanted: SpanView, celsius: float) -> Prose:
    """Return how hot a vessel gets here, what is ``wanted``, and whether that is enough."""
    handbook = spot.desk.content.handbook
    altitude = handbook.clinic.altitude.text() if handbook else ""
    enough = reach.reaches(celsius)
    if enough is None or reach.reached_celsius is None or reach.limit_kpa is None:
        return plain(_("Its limit is not stated, so it cannot be known. Refused."))
    facts = {
        "kpa": f"{reach.limit_kpa:g}",
        "celsius": tenths_down(reach.reached_celsius),
        "altitude": altitude,
    }
    said = _(
        "At {altitude} its {kpa}\u00a0kPa on the gauge give steam of {celsius}\u00a0°C at the most."
        " Needed: "
    ).format(**facts)
    verdict = _(". It can do this way.") if enough else _(". It cannot do this way here.")
    return (*plain(said), wanted, *plain(verdict))


def tenths_down(celsius: float) -> str:
    """Return a temperature in °C as people read it, rounded down so that it promises no more."""
    return f"{floor(celsius * 10) / 10:.1f}"


def _needs(spot: Spot, route: Route) -> tuple[Prose, ...]:
    equipment = spot.desk.content.equipment
    return tuple(
        (*plain(ended(sentence(equipment[each].name))), *plain(" "), *spot.prose(note))
        if (note := equipment[each].note)
        else plain(ended(sentence(equipment[each].name)))
        for each in route.needs
        if each in equipment
    )
