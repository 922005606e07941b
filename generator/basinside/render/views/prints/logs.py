"""The logs that are filled in by pen: soaks, boilings, strips."""

from __future__ import annotations

from basinside.model.derived import PlacedStep
from basinside.render.view_types import Prose
from basinside.render.view_types.prints import SheetView
from basinside.render.views.prints.frame import joined, unlinked
from basinside.render.views.prints.labels import solutions
from basinside.render.views.prints.log_frame import column, log_sheet_view
from basinside.render.views.prints.under_water import under_words
from basinside.render.views.spot import Spot, fact, present
from basinside.render.wording import _


def soak_log_view(spot: Spot) -> SheetView:
    """Return the log of the baths: in, out, and what stood in the bath."""
    limits = []
    for each in solutions(spot):
        if each.route.kind == "chemical":
            limits.append(fact(each.route.name, _bath_limits(spot, each.route.route)))
    return log_sheet_view(
        spot,
        "soak-log",
        _("Soak log"),
        _("One line for each soak. Write the time out before you walk away."),
        tuple(limits),
        (
            column(_("Day"), 8),
            column(_("Bath"), 8, _("which one, or wipe")),
            column(_("Bath made"), 8, _("made on: day, hour")),
            column(_("Strip"), 7, _("reads")),
            column(_("Heat"), 6, _("°C")),
            column(_("Item and unit"), 17, _("how many parts")),
            column(_("In"), 7, _("all under")),
            column(_("Out at"), 8, _("not before")),
            column(_("Out"), 7, _("really")),
            column(_("Rinsed"), 8, _("how often")),
            column(_("Test"), 8, _("every line passed")),
            column(_("By"), 8, _("staff code")),
        ),
        (
            _("Strip fails, bath cloudy or too old: throw it away, and soak in a new one."),
            _("Something was added: the time starts again, for all of it."),
        ),
    )


def _bath_limits(spot: Spot, route: str) -> Prose:
    """Return what a soak must keep to, out of its way and of the steps that hold it."""
    own = spot.desk.content.routes[route]
    agent = spot.desk.content.agents.get(own.agent or "")
    step = _level_step(spot, route)
    hold = step.step.hold if step else None
    limit = own.strength or (
        agent.strength_check.at_least if agent and agent.strength_check else None
    )
    said = [joined(unlinked(spot.value_prose(own.hold)))]
    for words, reference in (
        (_(", at most "), hold.no_longer_than if hold else None),
        (_("; bath at least "), own.temperature or (step.step.temperature if step else None)),
        (_("; strip at least "), limit),
        (_("; bath no older than "), agent.life if agent else None),
    ):
        value = unlinked(spot.value_prose(reference))
        if value:
            said.append(joined(words, value))
    return joined(*said, ".")


def _level_step(spot: Spot, route: str) -> PlacedStep | None:
    for whole in spot.desk.derived.procedures.values():
        if whole.procedure.route == route:
            for placed in whole.steps:
                if placed.is_level_step:
                    return placed
    return None


def boiling_log_view(spot: Spot) -> SheetView:
    """Return the log of the pot."""
    amounts = spot.desk.derived.amounts
    holds = [
        unlinked(spot.value_prose(each.hold))
        for each in spot.desk.content.routes.values()
        if each.kind == "boiling" and each.hold
    ]
    return log_sheet_view(
        spot,
        "boiling-log",
        _("Boiling log"),
        _("One line for each pot. The time starts at the rolling boil, lid on."),
        present(
            fact(_("Rolling boil"), joined(_("at least "), holds[0], ".")) if holds else None,
            fact(_("Here"), _("{metres} m above the sea.").format(metres=amounts.ground.altitude))
            if amounts.ground.altitude
            else None,
            fact(_("All under water"), under_words(spot)),
        ),
        (
            column(_("Day"), 9),
            column(_("Item and unit"), 20, _("how many parts")),
            column(_("Under"), 9, _("all of it: yes, or floats")),
            column(_("Boils at"), 11, _("clock time")),
            column(_("Out at"), 11, _("not before")),
            column(_("Out"), 9, _("really")),
            column(_("Stopped"), 11, _("started again")),
            column(_("Test"), 10, _("every line passed")),
            column(_("By"), 10, _("staff code")),
        ),
        (
            _("The boil stops or something is added: the time starts again, for all of it."),
            _("Boiled is high-level disinfected. It is never sterile."),
        ),
    )


def strength_check_log_view(spot: Spot) -> SheetView:
    """Return the log of the strips."""
    limits = []
    for each in solutions(spot):
        check = each.agent.strength_check
        limit = each.route.strength or (check.at_least if check else None)
        words = unlinked(spot.value_prose(limit))
        if words:
            life = unlinked(spot.value_prose(each.agent.life))
            limits.append(
                fact(
                    each.route.name,
                    joined(
                        _("strip at least "),
                        words,
                        *((_("; no older than "), life) if life else ()),
                        ".",
                    ),
                )
            )
    return log_sheet_view(
        spot,
        "strength-check-log",
        _("Strength-check log"),
        _("One strip before each use, read by its own chart, at its own time."),
        tuple(limits),
        (
            column(_("Day"), 10),
            column(_("Hour"), 9),
            column(_("Solution"), 17, _("which basin")),
            column(_("Made on"), 13, _("day, hour")),
            column(_("Strips"), 13, _("lot, good until")),
            column(_("Strip"), 10, _("reads")),
            column(_("Heat"), 8, _("°C")),
            column(_("Kept or thrown"), 10, _("K or T")),
            column(_("By"), 10, _("staff code")),
        ),
        (_("A failed strip ends the bath. Call back what was soaked since the last good strip."),),
    )
