"""The logs that are filled in by pen: soaks, boilings, steam loads, strips."""

from __future__ import annotations

from typing import Final

from basinside.model.derived import PlacedStep
from basinside.render.amount_words import amount_text
from basinside.render.view_types import FactView, Prose, plain
from basinside.render.view_types.prints import LogColumnView, LogView, SheetView
from basinside.render.views.prints.boiling_and_gauge import vent_words
from basinside.render.views.prints.frame import foot, joined, notices, print_hint, unlinked
from basinside.render.views.prints.labels import solutions
from basinside.render.views.spot import Spot, fact, present
from basinside.render.wording import _

ROW_MM: Final = 9.6
FREE_MM: Final = 214.0
"""The height that one sheet has for limits, rows and notes, and that of a row."""
LINE_MM: Final = 5.4
LETTERS_A_LINE: Final = 85
MOST_ROWS, LEAST_ROWS = 22, 6


def _rows(limits: tuple[FactView, ...], notes: tuple[str, ...]) -> int:
    """Return how many empty rows the sheet has room for."""
    texts = [
        *(each.label + "".join(span.text for span in each.text) for each in limits),
        *notes,
    ]
    lines = sum(1 + len(each) // LETTERS_A_LINE for each in texts)
    free = FREE_MM - lines * LINE_MM - len(notes) * LINE_MM / 2
    return max(LEAST_ROWS, min(MOST_ROWS, int(free / ROW_MM)))


def _sheet(
    spot: Spot,
    kind: str,
    title: str,
    lead: str,
    limits: tuple[FactView, ...],
    columns: tuple[LogColumnView, ...],
    notes: tuple[str, ...],
    ring: str,
) -> SheetView:
    return SheetView(
        kind="log",
        title=title,
        lead=plain(lead),
        hint=print_hint(),
        notices=notices(spot),
        foot=foot(spot, kind, ring=ring),
        log=LogView(
            limits=limits,
            columns=columns,
            rows=_rows(limits, notes),
            notes=tuple(plain(each) for each in notes),
        ),
    )


def _column(head: str, width: int, note: str = "") -> LogColumnView:
    return LogColumnView(head=head, width=width, note=note)


def soak_log_view(spot: Spot) -> SheetView:
    """Return the log of the baths: in, out, and what stood in the bath."""
    limits = []
    for each in solutions(spot):
        if each.route.kind == "chemical":
            limits.append(fact(each.route.name, _bath_limits(spot, each.route.route)))
    return _sheet(
        spot,
        "soak-log",
        _("Soak log"),
        _("One line for each soak. Write the time out before you walk away."),
        tuple(limits),
        (
            _column(_("Day"), 9),
            _column(_("Bath"), 10, _("which one")),
            _column(_("Strip"), 9, _("reads")),
            _column(_("Heat"), 8, _("°C")),
            _column(_("Item and unit"), 20, _("how many parts")),
            _column(_("In"), 8, _("all under")),
            _column(_("Out at"), 9, _("not before")),
            _column(_("Out"), 8, _("really")),
            _column(_("Rinsed"), 9, _("times")),
            _column(_("By"), 10, _("staff code")),
        ),
        (
            _("Strip fails, bath cloudy or too old: throw it away, and soak in a new one."),
            _("Something was added: the time starts again, for all of it."),
        ),
        "processing",
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
    return _sheet(
        spot,
        "boiling-log",
        _("Boiling log"),
        _("One line for each pot. The time starts at the rolling boil, lid on."),
        present(
            fact(_("Rolling boil"), joined(_("at least "), holds[0], ".")) if holds else None,
            fact(_("Here"), _("{metres} m above the sea.").format(metres=amounts.ground.altitude))
            if amounts.ground.altitude
            else None,
        ),
        (
            _column(_("Day"), 10),
            _column(_("Item and unit"), 24, _("how many parts")),
            _column(_("All under"), 10, _("yes")),
            _column(_("Boils at"), 12, _("clock time")),
            _column(_("Out at"), 12, _("not before")),
            _column(_("Out"), 10, _("really")),
            _column(_("Stopped"), 10, _("started again")),
            _column(_("By"), 12, _("staff code")),
        ),
        (
            _("The boil stops or something is added: the time starts again, for all of it."),
            _("Boiled is high-level disinfected. It is never sterile."),
        ),
        "processing",
    )


def steam_load_log_view(spot: Spot) -> SheetView:
    """Return the load record of the steam vessel."""
    vent = vent_words(spot)
    steam = [each for each in spot.desk.content.routes.values() if each.kind == "steam"]
    limits = [fact(_("Steady steam"), joined(_("at least "), vent, "."))] if vent else []
    for each in steam:
        held, heat = spot.value_prose(each.hold), spot.value_prose(each.temperature)
        if held:
            at = joined(_(" at "), unlinked(heat)) if heat else ()
            limits.append(fact(each.name, joined(unlinked(held), at, ".")))
    for asked in spot.desk.derived.amounts.of("gauge"):
        if asked.answer.refusal is None:
            own = next(
                one
                for one in spot.desk.derived.amounts.ground.vessels
                if one.vessel == asked.about[0]
            )
            first = asked.answer.amounts[0]
            shown = _("{amount} here, never above {limit} kPa.").format(
                amount=amount_text(first), limit=own.limit
            )
            limits.append(fact(_("On the dial"), shown))
    return _sheet(
        spot,
        "steam-load-log",
        _("Steam load record"),
        _("One line for each load. The load number goes on every pack of it."),
        tuple(limits),
        (
            _column(_("Load"), 8, _("number")),
            _column(_("Day"), 9),
            _column(_("What is in it"), 19, _("packs, units")),
            _column(_("Steam"), 9, _("steady from")),
            _column(_("Start"), 9, _("clock time")),
            _column(_("End"), 9, _("clock time")),
            _column(_("Lowest"), 9, _("kPa")),
            _column(_("Indicator"), 10, _("changed")),
            _column(_("Dry"), 7, _("all")),
            _column(_("Released by"), 11, _("staff code")),
        ),
        (
            _(
                "Indicator not changed, pack wet, or time or pressure lost: release nothing,"
                " and ring."
            ),
        ),
        "processing",
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
    return _sheet(
        spot,
        "strength-check-log",
        _("Strength-check log"),
        _("One strip before each use, read by its own chart, at its own time."),
        tuple(limits),
        (
            _column(_("Day"), 10),
            _column(_("Hour"), 9),
            _column(_("Solution"), 17, _("which basin")),
            _column(_("Made on"), 13, _("day, hour")),
            _column(_("Strips"), 13, _("lot, good until")),
            _column(_("Strip"), 10, _("reads")),
            _column(_("Heat"), 8, _("°C")),
            _column(_("Kept or thrown"), 10, _("K or T")),
            _column(_("By"), 10, _("staff code")),
        ),
        (_("A failed strip ends the bath. Call back what was soaked since the last good strip."),),
        "processing",
    )
