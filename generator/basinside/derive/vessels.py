"""Which temperature each vessel reaches at the clinic's altitude, within its marked pressure."""

from __future__ import annotations

from basinside.model.content import Content
from basinside.model.derived import VesselReach
from basinside.model.handbook import Vessel
from basinside.quantity import Quantity
from basinside.science.steam import temperature_at_gauge
from basinside.units import Kind


def vessel_reach(vessel: Vessel, altitude: Quantity) -> VesselReach:
    """Return what a vessel reaches at an altitude (a length, 0 to 5,500 m).

    A regulator that lifts below the marked working pressure decides; saturated steam without
    air is assumed, which is the best case (IAPWS-IF97).
    """
    regulator = vessel.regulator
    limits = [
        each
        for each in ((regulator.marked_working_pressure, regulator.lifts_at) if regulator else ())
        if each is not None and each.kind is Kind.GAUGE
    ]
    if not limits:
        return VesselReach(vessel=vessel, limit_kpa=None, reached_celsius=None)
    limit_kpa = float(min(each.base for each in limits) / 1000)
    try:
        reached = temperature_at_gauge(limit_kpa, float(altitude.base))
    except ValueError:
        return VesselReach(vessel=vessel, limit_kpa=limit_kpa, reached_celsius=None)
    return VesselReach(vessel=vessel, limit_kpa=limit_kpa, reached_celsius=reached)


def clinic_vessels(content: Content) -> tuple[VesselReach, ...]:
    """Return what each vessel of the clinic reaches."""
    handbook = content.handbook
    if handbook is None:
        return ()
    return tuple(vessel_reach(each, handbook.clinic.altitude) for each in handbook.clinic.vessels)
