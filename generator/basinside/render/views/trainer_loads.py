"""The trainer's page: two invented loads, judged on time and on F0, and what our vessels can do."""

from __future__ import annotations

from basinside.model.derived import VesselReach
from basinside.render.view_types import SectionView, TableView, plain
from basinside.render.views.curve import curve_view
from basinside.render.views.spot import Spot, fact, present
from basinside.render.views.trainer_numbers import (
    altitude_metres,
    amount,
    reference_celsius,
    steam_route,
    worth_minutes,
)
from basinside.render.views.ways import tenths_down
from basinside.render.wording import _, sentence
from basinside.science.boiling import boiling_point_celsius
from basinside.science.steam import CycleJudgement, f0_minutes, judge_cycle

WARM_CELSIUS = 80.0  # where the invented records begin
Record = tuple[tuple[float, ...], tuple[float, ...]]
"""Minutes, and the °C read at each."""


def _held_record(boil: float, heat: float, hold: float) -> Record:
    """Return an invented record: heated, air driven out, held with a little to spare, cooled."""
    top = heat + 1
    return (
        (0, 14, 24, 30, 34, 34 + hold / 2, 32 + hold, 46 + hold),
        (WARM_CELSIUS, boil, boil, heat, top, top, heat + 0.5, boil),
    )


def _dipped_record(boil: float, heat: float, hold: float) -> Record:
    """Return an invented record: hotter than asked for, but it fell below for a moment."""
    top, middle = heat + 2, 30 + hold / 2
    return (
        (0, 14, 24, 30, 34, middle, middle + 3, middle + 6, 32 + hold, 46 + hold),
        (WARM_CELSIUS, boil, boil, heat, top, top, heat - 3, top, top, boil),
    )


def load_sections(spot: Spot) -> tuple[SectionView, ...]:
    """Return a load that was held and one that fell below; none without a steam route."""
    found = steam_route(spot)
    if found is None:
        return ()
    _route, heat_figure, hold_figure = found
    heat, hold = float(heat_figure.value.base), float(hold_figure.value.base) / 60
    boil = boiling_point_celsius(altitude_metres(spot))
    held, dipped = _held_record(boil, heat, hold), _dipped_record(boil, heat, hold)
    return (
        _load(
            spot,
            "held",
            _("A load that was held"),
            held,
            _(
                "An invented record, from a warm vessel on. The time at temperature is enough, in"
                " one piece."
            ),
        ),
        _load(
            spot,
            "dipped",
            _("A load that fell below for a moment"),
            dipped,
            _(
                "An invented record. Its F0 is {dipped}\u00a0min, beside {held}\u00a0min of the"
                " load above. It failed all the same: the time starts again at each break."
            ).format(
                dipped=amount(f0_minutes(*dipped, reference_celsius(spot))),
                held=amount(f0_minutes(*held, reference_celsius(spot))),
            ),
        ),
    )


def _load(spot: Spot, anchor: str, heading: str, record: Record, said: str) -> SectionView:
    found = steam_route(spot)
    if found is None:
        raise ValueError("a load is drawn only where there is a steam route")
    route, heat_figure, hold_figure = found
    heat, hold = float(heat_figure.value.base), float(hold_figure.value.base) / 60
    minutes, celsius = record
    judged = judge_cycle(minutes, celsius, heat, hold)
    reference = reference_celsius(spot)
    return SectionView(
        anchor=anchor,
        heading=heading,
        text=(plain(said),),
        curve=curve_view(minutes, celsius, heat, judged, plain(_("Shaded: the time that counts."))),
        facts=present(
            fact(
                _("Asked for"),
                (
                    *spot.value_prose(route.hold),
                    *plain(_(" at ")),
                    *spot.value_prose(route.temperature),
                ),
            ),
            fact(
                _("Longest without a break"),
                _("{minutes}\u00a0min").format(minutes=amount(judged.held_minutes)),
                _broken(judged),
            ),
            fact(
                _("Verdict"),
                _("Held. Indicator and dryness decide the rest.")
                if judged.held
                else _("Failed. Run it again, whatever F0 says."),
            ),
            fact(
                _("F0"),
                _("{minutes}\u00a0min at {reference}\u00a0°C").format(
                    minutes=amount(f0_minutes(minutes, celsius, reference)),
                    reference=f"{reference:g}",
                ),
            ),
        ),
        table=TableView(
            caption=_("The readings"),
            columns=(_("Minute"), _("Steam")),
            rows=tuple(
                (f"{minute:g}", _("{celsius}\u00a0°C").format(celsius=f"{each:.1f}"))
                for minute, each in zip(minutes, celsius, strict=True)
            ),
        ),
    )


def _broken(judged: CycleJudgement) -> str:
    if judged.broken_at is None:
        return ""
    return _("it fell below at minute {minute}").format(minute=f"{judged.broken_at:.0f}")


def vessel_sections(spot: Spot) -> tuple[SectionView, ...]:
    """Return how much each vessel is worth at our altitude; none where nothing is known."""
    found = steam_route(spot)
    reaches = [
        each for each in spot.desk.derived.vessels.values() if each.reached_celsius is not None
    ]
    if found is None or not reaches:
        return ()
    _route, heat, hold = found
    minutes = float(hold.value.base) / 60
    return (
        SectionView(
            anchor="vessels",
            heading=_("What our vessels can do here"),
            text=(
                plain(
                    _(
                        "Steam as hot as it can get at our altitude, held for the time that is"
                        " asked for. Pressure alone says nothing while air is inside."
                    )
                ),
            ),
            table=TableView(
                caption=_("{minutes}\u00a0min in each vessel").format(minutes=f"{minutes:g}"),
                columns=(_("Vessel"), _("°C at most"), _("F0, min"), _("Enough?")),
                rows=tuple(
                    _vessel_row(spot, each, minutes, float(heat.value.base)) for each in reaches
                ),
            ),
        ),
    )


def _vessel_row(
    spot: Spot, reach: VesselReach, minutes: float, needed: float
) -> tuple[str, str, str, str]:
    celsius = reach.reached_celsius or 0.0
    return (
        sentence(reach.vessel.name or reach.vessel.vessel.replace("-", " ")),
        tenths_down(celsius),
        amount(worth_minutes(spot, minutes, celsius)),
        _("Yes") if reach.reaches(needed) else _("No: never use it to sterilize here"),
    )
