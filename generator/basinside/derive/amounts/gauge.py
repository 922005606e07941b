"""What a gauge must show at an altitude, for a vessel of ours or any other; or a refusal."""

from __future__ import annotations

from fractions import Fraction
from math import ceil, floor
from typing import Final

from basinside.derive.amounts.boiling import read_altitude
from basinside.derive.amounts.heights import (
    HIGHEST_CELSIUS,
    LOWEST_CELSIUS,
    gauge_kpa,
    reached_celsius,
    step_at,
)
from basinside.derive.amounts.numbers import plain
from basinside.derive.amounts.typed import Reader, RefusedInputError
from basinside.model.amounts import (
    CAUTIONS,
    DIALS,
    OVEN,
    SOURCES,
    Amount,
    Answer,
    Ground,
    OwnVessel,
    Said,
    said,
)

DIAL_KPA: Final = 5  # what a usual dial can be read to (common practice)


def gauge(ground: Ground, read: Reader) -> Answer:
    """Answer what the gauge must show; refuse where the vessel does not reach it in its mark."""
    vessel = _vessel(ground, read)
    celsius = read.whole("temperature", str(LOWEST_CELSIUS), str(HIGHEST_CELSIUS), "°C")
    metres = read_altitude(ground, read)
    at = step_at(ground.heights, metres)
    limit = _limit(vessel)
    needed = gauge_kpa(ground.heights, celsius, at)
    if needed > limit:
        _refuse(ground, vessel, celsius, needed, at)
    shown = -(-needed // DIAL_KPA) * DIAL_KPA
    if shown > limit:
        shown = needed
    steam = ground.heights.steam[celsius - LOWEST_CELSIUS]
    air = ground.heights.air[at]
    return Answer(
        kind="gauge",
        inputs=(
            said("echo-vessel", vessel=vessel.name, limit=vessel.limit)
            if vessel.name
            else said("echo-other-vessel", limit=vessel.limit),
            said("echo-temperature", celsius=str(celsius)),
            said("echo-altitude", number=plain(metres)),
        ),
        amounts=(
            Amount(
                number=str(shown),
                unit="kpa-gauge",
                of=said("of-gauge", celsius=str(celsius), limit=vessel.limit),
            ),
        ),
        working=(
            said("work-height", metres=str(at * ground.heights.step)),
            said(
                "work-gauge",
                steam=plain(Fraction(steam, 100)),
                air=plain(Fraction(air, 100)),
                needed=plain(Fraction(steam - air, 100)),
                shown=str(shown),
            ),
            *_other_dials(shown, limit),
            *((said("work-weight", limit=vessel.limit),) if vessel.weight else ()),
        ),
        cautions=CAUTIONS["gauge"],
        sources=SOURCES["gauge"],
    )


def _vessel(ground: Ground, read: Reader) -> OwnVessel:
    own = {each.vessel: each for each in ground.vessels}
    asked = read.choice("vessel", ("other", *own))
    if asked != "other":
        return own[asked]
    unit = read.choice("unit", DIALS)
    dial = DIALS[unit]
    mark = read.number("mark", dial.low, dial.high, unit) * dial.kpa
    limit = Fraction(floor(mark * 10), 10)
    return OwnVessel(
        vessel="other", name="", kind="gravity steam", limit=plain(limit), weight=False
    )


def _limit(vessel: OwnVessel) -> Fraction:
    if vessel.kind == OVEN:
        raise RefusedInputError(
            said("no-steam-in-oven", vessel=vessel.name), said("choose-steam-vessel")
        )
    if not vessel.limit:
        raise RefusedInputError(said("no-mark", vessel=vessel.name), said("read-plate"))
    return Fraction(vessel.limit)


def _refuse(ground: Ground, vessel: OwnVessel, celsius: int, needed: int, at: int) -> None:
    limit = _limit(vessel)
    reached = reached_celsius(ground.heights, limit, at)
    holes = {"celsius": str(celsius), "needed": str(needed), "limit": vessel.limit}
    reason = said("weight-too-early" if vessel.weight else "cannot-reach", **holes)
    others = [
        said("other-vessel", vessel=each.name)
        for each in ground.vessels
        if each.vessel != vessel.vessel
        and each.kind != OVEN
        and each.limit
        and needed <= Fraction(each.limit)
    ]
    raise RefusedInputError(
        reason,
        *others,
        said("boil-if-allowed"),
        said("never-alter"),
        said("only-reaches", reached=str(reached)) if reached else said("barely-boils"),
    )


def _other_dials(shown: int, limit: Fraction) -> tuple[Said, ...]:
    """Return the same pressure for other dials, rounded up, unless that passes the mark."""
    found = {}
    for name in ("bar", "psi", "kgf/cm²"):
        parts, kpa = 10 if name == "psi" else 100, DIALS[name].kpa
        value = Fraction(ceil(shown / kpa * parts), parts)
        if value * kpa > limit:
            return ()
        found[name] = plain(value)
    return (said("work-dials", kpa=str(shown), bar=found["bar"], psi=found["psi"],
                 kgf=found["kgf/cm²"]),)  # fmt: skip
