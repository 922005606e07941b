"""What can be used today: what holds on every day, as it stands without a script and on paper."""

from __future__ import annotations

from basinside.model.derived import RouteVerdict
from basinside.model.equipment import Route
from basinside.model.handbook import Contact
from basinside.model.shift import ShiftInstrument, ShiftWay
from basinside.render.view_types import (
    FactView,
    MatrixRowView,
    MatrixView,
    PlaceView,
    SpanView,
    TodayView,
    VerdictView,
    plain,
)
from basinside.render.views.decisions import by_whom
from basinside.render.views.spot import Spot, ended, fact
from basinside.render.views.ways import why_not
from basinside.render.wording import _, listed, sentence


def today_view(spot: Spot) -> TodayView:
    """Return the page that is ticked at the beginning of a shift."""
    return TodayView(
        title=_("What can I use today?"),
        lead=plain(
            _(
                "Tick what works this shift. Each instrument then shows which ways are open,"
                " and about when it would be ready."
            )
        ),
        place=PlaceView(
            anchor="shift",
            component="today",
            label=_("This shift"),
            without_script=plain(
                _(
                    "Ticking needs a script, and this browser runs none. The tables below say the"
                    " same: a way is open when all that it needs is there."
                )
            ),
        ),
        matrix_heading=_("Instruments and ways, on any day"),
        matrix=_matrix(spot),
        needs_heading=_("What each way needs"),
        needs=tuple(_needs(spot, route) for route in _routes(spot)),
        emergency_heading=_("When no way is open and somebody cannot wait"),
        emergency=emergency_facts(spot),
        single_heading=_("Single-use items"),
        single=_single(spot),
    )


def _routes(spot: Spot) -> list[Route]:
    """Return the clinic's routes by which something here comes back, in the clinic's order."""
    shown = spot.desk.derived.shift.instruments
    used = {way.route.route for each in shown for way in each.ways}
    content = spot.desk.content
    has = content.handbook.clinic.has if content.handbook else ()
    return [content.routes[name] for name in has if name in used]


def _matrix(spot: Spot) -> MatrixView:
    routes = _routes(spot)
    return MatrixView(
        caption=_("Which way is permitted for which instrument, when everything works?"),
        corner=_("Instrument"),
        columns=tuple(route.name for route in routes),
        rows=tuple(
            MatrixRowView(
                name=shown.instrument.name,
                href=spot.link(f"instruments/{shown.instrument.instrument}.html"),
                verdicts=tuple(_verdict(spot, shown, route) for route in routes),
            )
            for shown in spot.desk.derived.shift.instruments
        ),
    )


def _verdict(spot: Spot, shown: ShiftInstrument, route: Route) -> VerdictView:
    ways = [way for way in shown.ways if way.route is route]
    if ways:
        parts = {part.part: part.shown_name for way in ways for part in way.parts}
        about = _("about {time}").format(time=_longest(spot, ways))
        if len(parts) == len(shown.instrument.parts):
            return VerdictView(verdict="yes", word=_("Yes"), reason=plain(about))
        only = listed([*parts.values()])
        return VerdictView(verdict="some", word=_("Only {parts}").format(parts=only),
                           reason=plain(about))  # fmt: skip
    verdict = verdict_of(spot, shown, route)
    reason = why_not(verdict) if verdict.reasons else no_procedure()
    return VerdictView(verdict="no", word=_("No"), reason=plain(reason))


def _longest(spot: Spot, ways: list[ShiftWay]) -> str:
    longest = max(ways, key=lambda way: way.minutes)
    return spot.desk.whole(longest.procedure.procedure).about.text()


def verdict_of(spot: Spot, shown: ShiftInstrument, route: Route) -> RouteVerdict:
    """Return the verdict of one of the clinic's routes for an instrument."""
    return next(each for each in spot.desk.verdicts(shown.instrument) if each.route is route)


def no_procedure() -> str:
    """Return why a permitted route without a written procedure is not open."""
    return _("no procedure is written for it here")


def _needs(spot: Spot, route: Route) -> FactView:
    ways = [
        way
        for each in spot.desk.derived.shift.instruments
        for way in each.ways
        if way.route is route
    ]
    vessels = dict.fromkeys(vessel for way in ways for vessel in way.vessels)
    each_needs = [set(way.needs) for way in ways]
    always = [need for need in ways[0].needs if all(need in needs for needs in each_needs)]
    names = [*(vessel_name(spot, each) for each in vessels), *(need_name(spot, n) for n in always)]
    return fact(route.name, ended(sentence(listed(names))), _bath_words(spot, route))


def _bath_words(spot: Spot, route: Route) -> str:
    bath = next((e for e in spot.desk.derived.shift.baths if e.route is route), None)
    if bath is None:
        return ""
    said = []
    if bath.agent and bath.agent.life:
        life = spot.desk.content.figures[bath.agent.life.figure].value
        said.append(_("The bath lasts {life} at most.").format(life=life.text()))
    if bath.strip:
        said.append(_("Its strip is read before each use."))
    if bath.least:
        said.append(_("It is at {heat} or more.").format(heat=bath.least.text()))
    return " ".join(said)


def vessel_name(spot: Spot, vessel: str) -> str:
    """Return what a vessel of the clinic is called."""
    return spot.desk.derived.vessels[vessel].vessel.name or vessel.replace("-", " ")


def need_name(spot: Spot, need: str) -> str:
    """Return what a need of a shift is called."""
    kind, _mark, name = need.partition("/")
    content = spot.desk.content
    if kind == "equipment":
        return content.equipment[name].name
    if kind == "agent":
        agent = content.agents[name].name
        return agent[:1].lower() + agent[1:]
    if kind == "water":
        return {
            "drinking": _("clean water for washing and rinsing"),
            "boiled": _("boiled and cooled water"),
            "sterile": _("sterile water"),
        }[name]
    return name.replace("-", " ")


def emergency_facts(spot: Spot) -> tuple[FactView, ...]:
    """Return the clinic's own rules, and whom to ring where none is written."""
    handbook = spot.desk.content.handbook
    rules = handbook.clinic.emergency if handbook else ()
    without = [
        each.instrument.name for each in spot.desk.derived.shift.instruments if not each.emergency
    ]
    written = tuple(fact(sentence(each.when), spot.prose(each.do), by_whom(each)) for each in rules)
    if not without:
        return written
    return (*written, fact(sentence(listed(without)), no_rule(spot)))


def no_rule(spot: Spot) -> str:
    """Return whom to ring when the clinic wrote no rule for an instrument."""
    handbook = spot.desk.content.handbook
    ring = _contact(spot)
    if ring is None:
        return _("No emergency rule is written for it. Ask the {who}.").format(
            who=handbook.responsible if handbook else ""
        )
    return _(
        "No emergency rule is written for it. Ring the {who}: by day {day}, by night {night}."
    ).format(who=ring.who, day=ring.day, night=ring.night)


def _contact(spot: Spot) -> Contact | None:
    """Return the contact of whoever is responsible, else the first there is."""
    handbook = spot.desk.content.handbook
    contacts = handbook.contacts if handbook else ()
    own = (each for each in contacts if handbook and each.who == handbook.responsible)
    return next(own, contacts[0] if contacts else None)


def _single(spot: Spot) -> tuple[FactView, ...]:
    return tuple(
        fact(
            _("Never used again"),
            (
                SpanView(kind="link", text=each.name, href=spot.link(f"instruments/{name}.html")),
                *plain(". "),
                *(spot.prose(each.found_on_the_shelf) or plain(_("Throw it away after one use."))),
            ),
        )
        for name, each in spot.desk.content.instruments.items()
        if each.label == "single use"
    )
