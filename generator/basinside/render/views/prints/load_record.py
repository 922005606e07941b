"""The load record of the steam vessel: pressure and heat three times, indicators, release."""

from __future__ import annotations

from basinside.render.amount_words import amount_text
from basinside.render.view_types.prints import SheetView
from basinside.render.views.prints.boiling_and_gauge import vent_words
from basinside.render.views.prints.frame import joined, unlinked
from basinside.render.views.prints.log_frame import column, log_sheet_view
from basinside.render.views.spot import Spot, fact
from basinside.render.wording import _


def load_record_view(spot: Spot) -> SheetView:
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
    return log_sheet_view(
        spot,
        "load-record",
        _("Load record"),
        _(
            "One block for each load. The load number goes on every pack of it. Read the dial three"
            " times: pressure and heat, both."
        ),
        tuple(limits),
        (
            column(_("Load"), 7, _("number")),
            column(_("Day"), 7),
            column(_("What is in it"), 18, _("packs, set marks")),
            column(_("Steam"), 8, _("steady from")),
            column(_("Time"), 10, _("by the clock"), each_time=True),
            column(_("kPa"), 6, each_time=True),
            column(_("°C"), 6, each_time=True),
            column(_("Tape"), 9, _("changed on all")),
            column(_("TEST"), 11, _("opened: changed? Stick it in")),
            column(_("Dry"), 7, _("all packs")),
            column(_("Released by"), 11, _("staff code, or NO")),
        ),
        (
            _(
                "Tape or TEST not changed, pack wet, or time, pressure or heat lost: release"
                " nothing, and ring."
            ),
        ),
        times=(_("start"), _("middle"), _("end")),
    )
