"""Instruments: parts, the least level each needs, what each stands, which routes are permitted."""

from __future__ import annotations

from basinside.model.derived import NeededLevel
from basinside.model.instrument import Instrument, Part
from basinside.model.words import Contact
from basinside.render.view_types import (
    FactView,
    FigureView,
    InstrumentView,
    LinkView,
    LookAlikeView,
    PartView,
    Prose,
    SingleUseView,
    TestLineView,
    plain,
)
from basinside.render.views.routes import matrix_view, route_view
from basinside.render.views.spot import Spot, fact, present, state
from basinside.render.views.titles import procedure_title
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
            text=procedure_title(spot.desk.whole(name)),
            href=spot.link(f"procedures/{name}.html"),
            note=_("about {time}").format(time=spot.desk.whole(name).about.text()),
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
        routes=tuple(route_view(spot, instrument, each) for each in verdicts),
        parts_heading=_("Parts"),
        parts_note=plain(
            n_(
                "One part in all.",
                "{n} parts in all. Count them in and out.",
                sum(part.count for part in instrument.parts),
            )
        ),
        parts=tuple(_part(spot, instrument, part) for part in instrument.parts),
        take_apart_heading=_("Take apart, in this order"),
        take_apart=tuple(_part_name(instrument, each) for each in instrument.take_apart),
        matrix_heading=_("What each part tolerates"),
        matrix=matrix_view(spot, instrument, verdicts),
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


def language_name(tag: str) -> str:
    """Return a language as people say it; a tag we have no name for stays as it is."""
    names = {
        "en": _("English"),
        "fr": _("French"),
        "es": _("Spanish"),
        "pt": _("Portuguese"),
        "ar": _("Arabic"),
        "sw": _("Swahili"),
        "de": _("German"),
        "zh": _("Chinese"),
    }
    return names.get(tag.split("-", 1)[0], tag)


def _lead(spot: Spot, instrument: Instrument) -> Prose:
    if instrument.applies_to is None:
        return plain(_("For the {model}.").format(model=instrument.model or instrument.name))
    return (
        *plain(
            _("This is the {model}. Marked: ").format(model=instrument.model or instrument.name)
        ),
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
            _("in {languages}").format(
                languages=listed(tuple(language_name(each) for each in held.languages))
            ),
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
            fact(_("Needs at least"), sentence(needed.level), _why_level(needed)),
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


def _why_level(needed: NeededLevel) -> str:
    if needed.decided is None:
        return spaulding(needed.contact)
    return _("decided by {by} and {second}; the other view: {view}").format(
        by=needed.decided.by,
        second=needed.decided.second or "?",
        view=needed.decided.other_view,
    )


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
        "retire whole": _("Retire the whole instrument."),
        "replace part": _("Replace the part."),
        "repair": _("Send it for repair."),
    }
    gathered: dict[tuple[str, str], list[str]] = {}
    for part in instrument.parts:
        for sign in part.retire_when:
            gathered.setdefault((sign.sign, then[sign.then]), []).append(part.shown_name)
    return tuple(
        fact(sentence(listed(names)), (*spot.prose(state(sign)), *plain(f" {what}")))
        for (sign, what), names in gathered.items()
    )


def _use_limit(spot: Spot, instrument: Instrument) -> FigureView | None:
    limit = instrument.use_limit
    return spot.figure(limit.at, state(limit.counts), source=True) if limit else None


def _handling(spot: Spot, instrument: Instrument) -> tuple[FactView, ...]:
    moist, under = instrument.keep_moist_with, instrument.immersion
    agents = spot.desk.content.agents

    at_use: dict[str, list[str]] = {}
    for part, level in instrument.at_use.items():
        at_use.setdefault(level, []).append(part)

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
                _("At use, at least {level}").format(level=level),
                sentence(listed([each.replace("-", " ") for each in parts])),
            )
            for level, parts in at_use.items()
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
                text=procedure_title(spot.desk.whole(name)),
                href=spot.link(f"procedures/{name}.html"),
            )
            for name in spot.desk.procedures_of(instrument.instrument)
        ),
    )
