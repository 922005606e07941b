"""Instruments: parts, the least level each needs, what each stands, which routes are permitted."""

from __future__ import annotations

from basinside.model.derived import NeededLevel, Reason, RouteVerdict
from basinside.model.instrument import Instrument, Part
from basinside.model.words import Contact
from basinside.render.view_types import (
    FactView,
    FigureView,
    InstrumentView,
    LinkView,
    LookAlikeView,
    MatrixRowView,
    MatrixView,
    PartView,
    Prose,
    RouteView,
    SingleUseView,
    TestLineView,
    VerdictView,
    plain,
)
from basinside.render.views.procedure import procedure_title
from basinside.render.views.spot import Spot, fact, present, state
from basinside.render.views.waivers import waiver_views
from basinside.render.wording import _, listed, n_, sentence


def spaulding(contact: Contact) -> str:
    """Return the class that belongs to a contact (Spaulding, as CDC 2008 prints it)."""
    if contact in {"sterile tissue", "blood stream"}:
        return _("critical")
    if contact in {"mucous membrane", "broken skin"}:
        return _("semi-critical")
    if contact == "whole skin":
        return _("non-critical")
    return _("no contact")


def instrument_view(spot: Spot, instrument: Instrument) -> InstrumentView | SingleUseView:
    """Return the page of one instrument; an item for single use gets its refusal."""
    if instrument.label == "single use":
        return _single_use(spot, instrument)
    verdicts = spot.desk.verdicts(instrument)
    procedures = tuple(
        LinkView(
            text=procedure_title(spot, spot.desk.whole(name)),
            href=spot.link(f"procedures/{name}.html"),
            note=_("about {time}").format(
                time=spot.desk.whole(name).about.text()
            ),
        )
        for name in spot.desk.procedures_of(instrument.instrument)
    )
    return InstrumentView(
        title=instrument.name,
        lead=_lead(spot, instrument),
        facts=_facts(spot, instrument),
        assembled=spot.picture(
            instrument.assembled, _("The {name}, put together").format(name=instrument.name)
        ),
        drawing=spot.picture(
            instrument.drawing,
            _("The parts of the {name}, taken apart").format(name=instrument.name),
            _("Taken apart"),
        ),
        procedures_heading=_("Procedures"),
        procedures=procedures,
        look_alikes_heading=_("Looks the same, and is not"),
        look_alikes=_look_alikes(spot, instrument),
        routes_heading=_("Which ways are permitted here"),
        routes=tuple(_route(spot, instrument, each) for each in verdicts),
        parts_heading=_("Parts"),
        parts_note=plain(
            n_("One part in all.", "{n} parts in all. Count them in and out.",
               sum(part.count for part in instrument.parts))
        ),
        parts=tuple(_part(spot, instrument, part) for part in instrument.parts),
        take_apart_heading=_("Take apart, in this order"),
        take_apart=tuple(_part_name(instrument, each) for each in instrument.take_apart),
        matrix_heading=_("What each part tolerates"),
        matrix=_matrix(spot, instrument, verdicts),
        test_heading=_("Function test, after it is put together"),
        test_note=plain(_("A failed test always beats any count of uses.")),
        test=tuple(
            TestLineView(
                do=spot.prose(line.do),
                wait=spot.figure(line.wait),
                expect=fact(_("Must happen"), spot.prose(line.expect)),
                if_not=fact(_("If not"), spot.prose(line.if_not)),
            )
            for line in instrument.function_test
        ),
        retire_heading=_("When its life is over"),
        retire=_retire(spot, instrument),
        use_limit=_use_limit(spot, instrument),
        handling_heading=_("Handling"),
        handling=_handling(spot, instrument),
        waivers_heading=_("What is waived here"),
        waivers=waiver_views(
            spot,
            (
                *instrument.waive,
                *(waiver for each in verdicts for waiver in each.route.waive),
            ),
        ),
    )


def _lead(spot: Spot, instrument: Instrument) -> Prose:
    if instrument.applies_to is None:
        return plain(_("For the {model}.").format(model=instrument.model or instrument.name))
    return (
        *plain(_("This is the {model}. Marked: ").format(model=instrument.model or instrument.name)),
        *spot.prose(state(instrument.applies_to.marked)),
    )


def _facts(spot: Spot, instrument: Instrument) -> tuple[FactView, ...]:
    held = instrument.instructions_held
    whole = spot.desk.instrument(instrument)
    contact = whole.gravest
    return present(
        fact(
            _("Needs at least"),
            sentence(whole.highest),
            _("touches {contact}: {kind}").format(contact=contact, kind=spaulding(contact)),
        ),
        fact(_("Label"), sentence(_for_whom(instrument.label))),
        fact(
            _("Maker's instructions"),
            sentence(held.where),
            _("in {languages}").format(languages=listed(held.languages)),
        )
        if held
        else fact(_("Maker's instructions"), _("None held: not in use")),
        fact(_("Units"), listed(instrument.units)),
    )


def _for_whom(label: str) -> str:
    return {
        "several patients": _("for several patients"),
        "single patient": _("for one patient only"),
        "single use": _("for one use only"),
    }[label]


def _part_name(instrument: Instrument, part: str) -> str:
    found = instrument.part_named(part)
    return sentence(found.shown_name if found else part.replace("-", " "))


def _part(spot: Spot, instrument: Instrument, part: Part) -> PartView:
    needed = spot.desk.instrument(instrument).needed[part.part]
    tools, oil = part.tools, part.lubricate
    agent = spot.desk.content.agents.get(oil.with_) if oil else None
    return PartView(
        anchor=part.part,
        name=sentence(part.shown_name),
        count=n_("one", "{n} of them", part.count),
        facts=present(
            fact(_("Touches"), sentence(listed(part.touches))),
            fact(_("Needs at least"), sentence(needed.level), _why_level(spot, needed)),
            fact(_("Hollow inside"), _("Yes: fill it, flush it, look through it"))
            if part.lumen
            else None,
            fact(_("Use only"), listed(tools.use)) if tools else None,
            fact(_("Never use"), listed(tools.never)) if tools else None,
            fact(
                _("Lubricate"),
                (
                    *spot.prose(oil.amount),
                    *plain(_(" of {name}, when ").format(name=agent.name if agent else oil.with_)),
                    *spot.prose(oil.when),
                ),
                _("never {what}").format(what=oil.never) if oil.never else "",
            )
            if oil
            else None,
        ),
        waivers=waiver_views(spot, part.waive),
    )


def _why_level(spot: Spot, needed: NeededLevel) -> str:
    if needed.decided is None:
        return spaulding(needed.contact)
    return _("decided by {by} and {second}; the other view: {view}").format(
        by=needed.decided.by,
        second=needed.decided.second or "?",
        view=needed.decided.other_view,
    )


def _route(spot: Spot, instrument: Instrument, verdict: RouteVerdict) -> RouteView:
    route = verdict.route
    procedures = [
        name
        for name in spot.desk.procedures_of(instrument.instrument)
        if spot.desk.content.procedures[name].route == route.route
    ]
    if not verdict.permitted:
        return RouteView(
            anchor=f"route-{route.route}",
            name=route.name,
            permitted=False,
            verdict=_("Refused"),
            facts=_gathered_reasons(spot, verdict),
            instead=_instead(spot, instrument),
        )
    durations = [spot.desk.whole(name).about.text() for name in procedures]
    return RouteView(
        anchor=f"route-{route.route}",
        name=route.name,
        permitted=True,
        verdict=_("Permitted"),
        reason=plain(
            _("Every part stands it and it reaches: {level}.").format(level=verdict.level)
        ),
        facts=present(
            fact(
                _("Who says it reaches that"),
                spot.citation(verdict.reaches.source) if verdict.reaches else "",
            ),
            fact(_("Held"), spot.value_prose(route.hold)),
            fact(_("About"), listed(tuple(dict.fromkeys(durations)))),
            fact(
                _("Vessels"),
                listed([each.vessel.name or each.vessel.vessel for each in verdict.vessels]),
            ),
        ),
        procedures=tuple(
            LinkView(
                text=procedure_title(spot, spot.desk.whole(name)),
                href=spot.link(f"procedures/{name}.html"),
            )
            for name in procedures
        ),
    )


def _gathered_reasons(spot: Spot, verdict: RouteVerdict) -> tuple[FactView, ...]:
    """Return one line for each property and source, naming every part it holds for."""
    gathered: dict[tuple[str, str], list[str]] = {}
    for reason in verdict.reasons:
        name = reason.part.shown_name if reason.part else ""
        gathered.setdefault((_property(spot, reason), spot.citation(reason.source)), []).append(
            name
        )
    return tuple(
        fact(
            sentence(listed(tuple(dict.fromkeys(filter(None, names)))) or _("This instrument")),
            what,
            source,
        )
        for (what, source), names in gathered.items()
    )


def _property(spot: Spot, reason: Reason) -> str:
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


def _instead(spot: Spot, instrument: Instrument) -> Prose:
    good = [each.route.name for each in spot.desk.verdicts(instrument) if each.permitted]
    if not good:
        return plain(
            _("Nothing is permitted here for this instrument. Ask the {who}.").format(
                who=_responsible(spot)
            )
        )
    return plain(_("What would do: {routes}.").format(
        routes=listed([each[:1].lower() + each[1:] for each in good])))


def _responsible(spot: Spot) -> str:
    handbook = spot.desk.content.handbook
    return handbook.responsible if handbook else ""


def _matrix(
    spot: Spot, instrument: Instrument, verdicts: tuple[RouteVerdict, ...]
) -> MatrixView | None:
    if not verdicts or not instrument.parts:
        return None
    routes = [each.route for each in verdicts]
    sources = dict.fromkeys(
        part.survives.source for part in instrument.parts if part.survives
    )
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


def _look_alikes(spot: Spot, instrument: Instrument) -> tuple[LookAlikeView, ...]:
    views = []
    for alike in instrument.look_alikes:
        other = spot.desk.content.instruments.get(alike.instrument)
        if other is None:
            continue
        views.append(
            LookAlikeView(
                link=LinkView(
                    text=other.name, href=spot.link(f"instruments/{other.instrument}.html")
                ),
                tell_apart=spot.prose(alike.tell_apart),
                picture=spot.picture(
                    other.assembled or other.drawing,
                    _("The {name}").format(name=other.name),
                ),
            )
        )
    return tuple(views)


def _retire(spot: Spot, instrument: Instrument) -> tuple[FactView, ...]:
    then = {
        "retire whole": _("retire the whole instrument"),
        "replace part": _("replace the part"),
        "repair": _("send it for repair"),
    }
    gathered: dict[tuple[str, str], list[str]] = {}
    for part in instrument.parts:
        for sign in part.retire_when:
            gathered.setdefault((sign.sign, then[sign.then]), []).append(part.shown_name)
    return tuple(
        fact(sentence(listed(names)), (*spot.prose(sentence(sign)), *plain(f": {what}.")))
        for (sign, what), names in gathered.items()
    )


def _use_limit(spot: Spot, instrument: Instrument) -> FigureView | None:
    limit = instrument.use_limit
    return spot.figure(limit.at, state(limit.counts), source=True) if limit else None


def _handling(spot: Spot, instrument: Instrument) -> tuple[FactView, ...]:
    moist, under = instrument.keep_moist_with, instrument.immersion
    agents = spot.desk.content.agents

    def named(words: tuple[str, ...]) -> str:
        return sentence(
            listed([agents[each].name.lower() if each in agents else each for each in words])
        )

    return present(
        fact(_("Keep moist with"), named(moist.use)) if moist else None,
        fact(_("Never keep it in"), named(moist.never)) if moist else None,
        fact(_("When boiled"), sentence(under.boiling or "")) if under else None,
        fact(_("In a chemical bath"), sentence(under.chemical or "")) if under else None,
        *(
            fact(
                _("At use, {part}").format(part=part.replace("-", " ")),
                _("at least {level}").format(level=level),
            )
            for part, level in instrument.at_use.items()
        ),
    )


def _single_use(spot: Spot, instrument: Instrument) -> SingleUseView:
    return SingleUseView(
        title=instrument.name,
        sign=spot.sign("mark", "do not re-use"),
        refusal=_("Never to be used again"),
        reason=plain(
            _(
                "It is made for one use only. Nobody states that it can be cleaned, or that it"
                " stands any way of reprocessing. So every way is refused."
            )
        ),
        found_heading=_("Found on the shelf, opened or used?"),
        found=spot.prose(instrument.found_on_the_shelf),
        picture=spot.picture(
            instrument.assembled or instrument.drawing,
            _("The {name}").format(name=instrument.name),
        ),
        facts=present(
            fact(_("Model"), instrument.model or ""),
            fact(_("Label"), sentence(_for_whom(instrument.label))),
            fact(_("Marked"), spot.prose(state(instrument.applies_to.marked)))
            if instrument.applies_to
            else None,
        ),
        related=tuple(
            LinkView(
                text=procedure_title(spot, spot.desk.whole(name)),
                href=spot.link(f"procedures/{name}.html"),
            )
            for name in spot.desk.procedures_of(instrument.instrument)
        ),
    )
