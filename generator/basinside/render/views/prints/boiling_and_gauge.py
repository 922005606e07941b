"""The card beside the stove: boiling here, and what each vessel's gauge must show here."""

from __future__ import annotations

from basinside.model.amounts import Amounts, Answer, Usual
from basinside.quantity import NO_BREAK_SPACE
from basinside.render.amount_words import amount_text, said_words
from basinside.render.view_types import FactView, Prose, plain
from basinside.render.view_types.prints import CardBlockView, SheetView
from basinside.render.views.prints.frame import foot, notices, print_hint, unlinked
from basinside.render.views.prints.under_water import under_words
from basinside.render.views.spot import Spot, fact, present
from basinside.render.wording import _, sentence

FIRST_VESSELS, MORE_VESSELS = 2, 4
"""Vessels that the first card has room for beside boiling and loads, and every further one."""


def vessel_sheets(amounts: Amounts) -> tuple[tuple[Usual, ...], ...]:
    """Return the vessels of each card; the first one is there without any, too."""
    vessels = amounts.of("gauge")
    more = range(FIRST_VESSELS, len(vessels), MORE_VESSELS)
    return (vessels[:FIRST_VESSELS], *(vessels[n : n + MORE_VESSELS] for n in more))


def boiling_and_gauge_view(spot: Spot, sheet: int = 0) -> SheetView:
    """Return the card of this altitude; ``sheet`` counts from 0 where there are many vessels."""
    amounts = spot.desk.derived.amounts
    return SheetView(
        kind="card",
        title=_("Boiling and steam at {metres} m").format(metres=amounts.ground.altitude),
        lead=plain(
            _(
                "Higher up the air is thinner: water boils cooler, and the gauge must stand higher"
                " for the same heat. These figures are for this place only."
            )
        ),
        hint=print_hint(),
        notices=notices(spot),
        foot=foot(spot, "boiling-and-gauge-card", ring="processing"),
        card=(
            *(_boiling(spot, each.answer) for each in amounts.of("boiling") if sheet == 0),
            *(_vessel(spot, each) for each in vessel_sheets(amounts)[sheet]),
            *((_steam(spot),) if amounts.of("gauge") and sheet == 0 else ()),
        ),
    )


def _boiling(spot: Spot, answer: Answer) -> CardBlockView:
    large = []
    for each in answer.amounts:
        label = (
            _("at a rolling boil, at least")
            if each.of.code == "of-rolling-boil"
            else _("hot is boiling water here")
        )
        large.append(fact(label, amount_text(each).replace(" ", NO_BREAK_SPACE)))
    return CardBlockView(
        heading=_("Boiling"),
        large=tuple(large),
        lines=(
            plain(
                _(
                    "Bubbles that do not stop when stirred, lid on: start the time. Something"
                    " added? The time starts again."
                )
            ),
            plain(_("Under water: {which}").format(which=under_words(spot))),
            plain(_("Boiled is high-level disinfected. It is never sterile.")),
        ),
    )


def _vessel(spot: Spot, usual: Usual) -> CardBlockView:
    answer, ground = usual.answer, spot.desk.derived.amounts.ground
    own = next(each for each in ground.vessels if each.vessel == usual.about[0])
    name = sentence(own.name)
    if answer.refusal is not None:
        said = (answer.refusal, *answer.would_do)
        return CardBlockView(
            heading=name,
            verdict=_("Not for sterilizing here"),
            lines=tuple(plain(sentence(said_words(each))) for each in said),
        )
    first = answer.amounts[0]
    celsius = dict(first.of.holes).get("celsius", "")
    return CardBlockView(
        heading=name,
        verdict=_("Can sterilize here"),
        large=present(
            fact(
                _("on the gauge, or more, for {heat} °C").format(heat=celsius),
                amount_text(first).removesuffix(" gauge").replace(" ", NO_BREAK_SPACE),
            ),
            fact(_("never above this mark"), f"{own.limit}{NO_BREAK_SPACE}kPa")
            if own.limit
            else None,
        ),
        lines=tuple(
            plain(_("On other dials: {same}.").format(same=said_words(each)))
            for each in answer.working
            if each.code == "work-dials"
        ),
    )


def _steam(spot: Spot) -> CardBlockView:
    large: list[FactView] = []
    vent = vent_words(spot)
    if vent:
        large.append(fact(_("steady steam first, stopcock open"), vent))
    for route in spot.desk.content.routes.values():
        held = unlinked(spot.value_prose(route.hold))
        if route.kind == "steam" and held:
            large.append(fact(_("held: {way}").format(way=route.name.lower()), held))
    return CardBlockView(
        heading=_("Every steam load"),
        large=tuple(large),
        lines=(
            plain(
                _(
                    "Air inside shows pressure without heat. Close the stopcock only after steady"
                    " steam. Start the time when pressure and heat are both there."
                )
            ),
            plain(
                _(
                    "Never above the mark. Pressure climbs? Turn the flame down. Open at zero,"
                    " stopcock first."
                )
            ),
        ),
    )


def vent_words(spot: Spot) -> Prose:
    """Return how long steady steam drives the air out, as the steam procedures hold it."""
    for whole in spot.desk.derived.procedures.values():
        if whole.route is None or whole.route.kind != "steam":
            continue
        for placed in whole.steps:
            if placed.step.action == "hold" and placed.stage.stage == "sterilization":
                return unlinked(spot.value_prose(placed.step.hold))
    return ()
