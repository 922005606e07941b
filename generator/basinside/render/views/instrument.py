"""Instruments: parts, the least level each needs, what each stands, which routes are permitted."""

from __future__ import annotations

from basinside.model.at_hand import route_not_had
from basinside.model.instrument import Instrument
from basinside.render.view_types import (
    FactView,
    FigureView,
    InstrumentView,
    LinkView,
    LookAlikeView,
    PictureView,
    Prose,
    RouteView,
    SingleUseView,
    TestLineView,
    plain,
)
from basinside.render.views.chemicals import chemicals
from basinside.render.views.partly import for_parts, never_heat
from basinside.render.views.parts import drawn_parts, part_view, retire_facts, spaulding
from basinside.render.views.routes import matrix_view, route_view
from basinside.render.views.spot import Spot, fact, present, state
from basinside.render.views.titles import procedure_title, short_title
from basinside.render.views.waivers import waiver_views
from basinside.render.wording import _, listed, n_, sentence


def instrument_view(spot: Spot, instrument: Instrument) -> InstrumentView | SingleUseView:
    """Return the page of one instrument; an item for single use gets its refusal."""
    if instrument.label == "single use":
        return _single_use(spot, instrument)
    verdicts = spot.desk.verdicts(instrument)
    return InstrumentView(
        title=instrument.name,
        lead=_lead(spot, instrument),
        never=never_heat(spot, instrument),
        facts=_facts(spot, instrument),
        assembled=spot.picture(
            instrument.assembled, _("The {name}, put together").format(name=instrument.name)
        ),
        drawing=_apart(spot, instrument),
        procedures_heading=_("Procedures"),
        procedures=_procedures(spot, instrument),
        look_alikes_heading=_("Looks the same, and is not"),
        look_alikes=_look_alikes(spot, instrument),
        routes_heading=_("Which ways are permitted here"),
        routes=_routes(spot, instrument),
        parts_heading=_("Parts"),
        parts_note=plain(
            n_(
                "One part in all.",
                "{n} parts in all. Count them in and out.",
                sum(part.count for part in instrument.parts),
            )
        ),
        parts=tuple(part_view(spot, instrument, part) for part in instrument.parts),
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
        retire=retire_facts(spot, instrument),
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


def _procedures(spot: Spot, instrument: Instrument) -> tuple[LinkView, ...]:
    return tuple(
        LinkView(
            text=short_title(spot.desk.whole(name)),
            href=spot.link(f"procedures/{name}.html"),
            note=_("about {time}").format(time=spot.desk.whole(name).about.text())
            if route_not_had(spot.desk.content, spot.desk.whole(name)) is None
            else _("not possible here"),
        )
        for name in spot.desk.procedures_of(instrument.instrument)
    )


def _routes(spot: Spot, instrument: Instrument) -> tuple[RouteView, ...]:
    """Return what may be done first, then what may be done to some parts, then the refusals."""
    verdicts = spot.desk.verdicts(instrument)
    order = sorted(verdicts, key=lambda each: (not each.permitted, not for_parts(spot, each)))
    return tuple(route_view(spot, instrument, each) for each in order)


def _apart(spot: Spot, instrument: Instrument) -> PictureView | None:
    return spot.picture(
        instrument.drawing,
        _("The parts of the {name}, taken apart").format(name=instrument.name),
        _("Taken apart: {parts}.").format(parts=drawn_parts(instrument)),
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
                own=_beside(spot, instrument, _("This one")) if _drawn(spot, other) else None,
                picture=_beside(spot, other, _("The other one")),
            )
        )
    return tuple(views)


def _drawn(spot: Spot, instrument: Instrument) -> str:
    """Return the name of the drawing that shows an instrument best; empty for none."""
    pictures = spot.desk.content.pictures
    names = (instrument.assembled, instrument.drawing)
    return next((each for each in names if each and each in pictures), "")


def _beside(spot: Spot, instrument: Instrument, which: str) -> PictureView | None:
    marked = instrument.applies_to.marked if instrument.applies_to else ""
    return spot.picture(
        _drawn(spot, instrument),
        _("The {name}").format(name=instrument.name),
        _("{which}: {name}. {marked}").format(
            which=which, name=instrument.name, marked=state(marked) if marked else ""
        ),
    )


def _use_limit(spot: Spot, instrument: Instrument) -> FigureView | None:
    limit = instrument.use_limit
    return spot.figure(limit.at, state(limit.counts), source=True) if limit else None


def _handling(spot: Spot, instrument: Instrument) -> tuple[FactView, ...]:
    moist, under = instrument.keep_moist_with, instrument.immersion
    at_use: dict[str, list[str]] = {}
    for part, level in instrument.at_use.items():
        at_use.setdefault(level, []).append(part)

    return present(
        fact(_("Keep moist with"), chemicals(spot, moist.use)) if moist else None,
        fact(_("Never keep it moist with (before it is clean)"), chemicals(spot, moist.never))
        if moist
        else None,
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
