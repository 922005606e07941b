"""Which ways are permitted for an instrument, and what each of its parts tolerates."""

from __future__ import annotations

from basinside.model.derived import Reason, RouteVerdict
from basinside.model.instrument import Instrument, Part
from basinside.render.view_types import (
    FactView,
    LinkView,
    MatrixRowView,
    MatrixView,
    Prose,
    RouteView,
    VerdictView,
    plain,
)
from basinside.render.views.partly import for_parts
from basinside.render.views.spot import Spot, fact, present, state
from basinside.render.views.titles import procedure_title
from basinside.render.wording import _, listed, sentence


def route_view(spot: Spot, instrument: Instrument, verdict: RouteVerdict) -> RouteView:
    """Return one way with its verdict, and for a refusal every reason and what would do."""
    route = verdict.route
    procedures = [
        name
        for name in spot.desk.procedures_of(instrument.instrument)
        if spot.desk.content.procedures[name].route == route.route
    ]
    if for_parts(spot, verdict):
        return _partly(spot, verdict, procedures)
    if not verdict.permitted:
        return RouteView(
            anchor=f"route-{route.route}",
            name=route.name,
            permitted=False,
            verdict=_("Refused"),
            facts=_gathered_reasons(spot, verdict),
            instead=what_would_do(spot, instrument),
        )
    return RouteView(
        anchor=f"route-{route.route}",
        name=route.name,
        permitted=True,
        verdict=_("Permitted"),
        reason=plain(
            _("Every part stands it and it reaches: {level}.").format(level=verdict.level)
        ),
        facts=_how(spot, verdict, procedures),
        procedures=_links(spot, procedures),
    )


def _partly(spot: Spot, verdict: RouteVerdict, procedures: list[str]) -> RouteView:
    """Return a way that is permitted for some parts, and for each other part why it is not."""
    fit = sentence(listed([each.shown_name for each in verdict.fit]))
    return RouteView(
        anchor=f"route-{verdict.route.route}",
        name=verdict.route.name,
        permitted=True,
        partly=True,
        verdict=_("Permitted for some parts only"),
        fit=fact(
            _("Permitted for:"),
            state(fit),
            _("They stand it, and it reaches: {level}.").format(level=verdict.level),
        ),
        facts=(
            *(
                fact(_("Not for:"), f"{parts} ({what})", source)
                for parts, what, source in reasons_by_part(spot, verdict)
            ),
            *_how(spot, verdict, procedures),
        ),
        procedures=_links(spot, procedures),
    )


def _how(spot: Spot, verdict: RouteVerdict, procedures: list[str]) -> tuple[FactView, ...]:
    durations = [spot.desk.whole(name).about.text() for name in procedures]
    return present(
        fact(
            _("Who says it reaches that"),
            spot.citation(verdict.reaches.source) if verdict.reaches else "",
        ),
        fact(_("Held for"), spot.value_prose(verdict.route.hold)),
        fact(_("About"), listed(tuple(dict.fromkeys(durations)))),
        fact(
            _("Vessels"),
            listed([each.vessel.name or each.vessel.vessel for each in verdict.vessels]),
        ),
    )


def _links(spot: Spot, procedures: list[str]) -> tuple[LinkView, ...]:
    return tuple(
        LinkView(
            text=procedure_title(spot.desk.whole(name)),
            href=spot.link(f"procedures/{name}.html"),
        )
        for name in procedures
    )


def _gathered_reasons(spot: Spot, verdict: RouteVerdict) -> tuple[FactView, ...]:
    return tuple(
        fact(sentence(parts) or _("This instrument"), what, source)
        for parts, what, source in reasons_by_part(spot, verdict)
    )


def reasons_by_part(spot: Spot, verdict: RouteVerdict) -> list[tuple[str, str, str]]:
    """Return (parts, property, source) of a refusal: each property with all parts it holds for."""
    gathered: dict[tuple[str, str], list[str]] = {}
    for reason in verdict.reasons:
        name = reason.part.shown_name if reason.part else ""
        gathered.setdefault((_property(reason), spot.citation(reason.source)), []).append(name)
    return [
        (listed(tuple(dict.fromkeys(filter(None, names)))), what, source)
        for (what, source), names in gathered.items()
    ]


def _property(reason: Reason) -> str:
    vessel = reason.vessel
    return {
        "single-use": _("made for one use only"),
        "part-not-survive": _("does not stand it"),
        "part-not-stated": _("not stated by the maker, so refused"),
        "no-evidence": _("nobody states which level this way reaches on it"),
        "level-too-low": _("needs {needed}, and this way reaches only {reached}").format(
            needed=reason.needed, reached=reason.reached
        ),
        "no-vessel": _("no vessel for it here"),
        "vessel-too-cool": _("{vessel} cannot get hot enough at this altitude").format(
            vessel=(vessel.vessel.name or vessel.vessel.vessel) if vessel else ""
        ),
    }[reason.kind]


def what_would_do(spot: Spot, instrument: Instrument) -> Prose:
    """Return the ways that are permitted for an instrument, or whom to ask when none is."""
    good = []
    for each in spot.desk.verdicts(instrument):
        name = each.route.name[:1].lower() + each.route.name[1:]
        if each.permitted:
            good.append(name)
        elif for_parts(spot, each):
            parts = listed([part.shown_name for part in each.fit])
            good.append(_("{route} for {parts}").format(route=name, parts=parts))
    if not good:
        return plain(
            _("Nothing is permitted here for this instrument. Ask the {who}.").format(
                who=_responsible(spot)
            )
        )
    return plain(_("What would do: {routes}.").format(routes=listed(good)))


def _responsible(spot: Spot) -> str:
    handbook = spot.desk.content.handbook
    return handbook.responsible if handbook else ""


def matrix_view(
    spot: Spot, instrument: Instrument, verdicts: tuple[RouteVerdict, ...]
) -> MatrixView | None:
    """Return parts by ways: does the part stand it, and who says so."""
    if not verdicts or not instrument.parts:
        return None
    routes = [each.route for each in verdicts]
    sources = dict.fromkeys(part.survives.source for part in instrument.parts if part.survives)
    return MatrixView(
        caption=_("Does the part stand this way of reprocessing?"),
        corner=_("Part"),
        columns=tuple(route.name for route in routes),
        rows=tuple(
            MatrixRowView(
                name=sentence(part.shown_name),
                href=f"#{part.part}",
                verdicts=tuple(_stands(part, route.route) for route in routes),
            )
            for part in instrument.parts
        ),
        notes=tuple(fact(_("Source"), spot.citation(source)) for source in sources),
    )


def _stands(part: Part, route: str) -> VerdictView:
    stands = part.stands(route)
    if stands is None:
        return VerdictView(verdict="not stated", word=_("Not stated"))
    if stands:
        return VerdictView(verdict="yes", word=_("Yes"))
    return VerdictView(verdict="no", word=_("No"))
