"""The rule vessel-cannot-reach."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked, Sound
from basinside.check.rule import Finding, rule
from basinside.check.saying import amount, rounded_down
from basinside.model.content import Content
from basinside.model.derived import VesselReach
from basinside.problem import Level
from basinside.quantity import Quantity
from basinside.units import Kind

_NO_PRESSURE: Final = (
    "Write under “regulator:” what is marked on the vessel, or at which pressure its weight lifts."
)


@rule(level=Level.NEVER)
def check_vessel_cannot_reach(checked: Checked) -> Iterator[Finding]:
    """The vessel of a steam procedure reaches its temperature here, within its marked pressure.

    Why: air is thinner higher up, so the same gauge pressure gives cooler steam. At 2,350 m a
    weight that lifts at 103 kPa gives about 117 °C and not 121 °C: the pack looks done and is not
    sterile. Pressure above the mark can burst the vessel, so nobody may make up for it.
    A vessel that is owned and cannot reach a temperature is no problem; a procedure that uses it
    is. A steam procedure names its vessel, and the vessel its pressure.
    Bad: `vessel: stovetop-weight` with `temperature: {figure: steam.temperature}` of 121 °C.
    Good: `vessel: stovetop-adjustable`, marked for 150 kPa gauge. A clinic that owns none such
    takes its steam procedures out; what only steam makes safe is then refused on its pages.
    Source: IAPWS-IF97, region 4, for steam; ICAO standard atmosphere for the air.
    """
    for each in checked.sound:
        if each.route.kind == "steam":
            yield from _against(checked, each)


def _against(checked: Checked, each: Sound) -> Iterator[Finding]:
    procedure = each.whole.procedure
    wanted = _temperature(checked, each)
    if wanted is None and _lost(checked, each):
        return
    if wanted is None:
        yield Finding(
            procedure.place.at("route"),
            f"{each.name} sterilizes by steam, and neither {each.route.route} nor its steps state"
            " a temperature",
            "Write “temperature:” with its figure at the route.",
            (each.route.place,),
        )
        return
    if procedure.vessel is None:
        message = f"{each.name} needs steam at {amount(wanted)} and names no vessel"
        yield Finding(procedure.place, message, _mend(checked, wanted))
        return
    reach = checked.derived.vessels.get(procedure.vessel)
    said = _cannot(checked.content, reach, wanted) if reach else ""
    if said:
        judged = reach is not None and (reach.reached_celsius is not None or _is_oven(reach))
        hint = _mend(checked, wanted) if judged else _NO_PRESSURE
        yield Finding(procedure.place.at("vessel"), f"{procedure.vessel} {said}", hint)


def _mend(checked: Checked, wanted: Quantity) -> str:
    """Return which vessel to name instead, or that this cannot be done here."""
    hot = [
        name
        for name, reach in checked.derived.vessels.items()
        if not _is_oven(reach) and reach.reaches(float(wanted.base))
    ]
    if hot:
        return f"Write “vessel: {hot[0]}”."
    return "No vessel here reaches that. Take the procedure out, and its route out of “has”."


def _is_oven(reach: VesselReach) -> bool:
    return reach.vessel.kind == "dry heat oven"


def _lost(checked: Checked, each: Sound) -> bool:
    """Whether a temperature is named whose value cannot be read, which has its own line."""
    named = (each.route.temperature, *(placed.temperature for placed in each.level_steps))
    return any(reference and checked.figure(reference) is None for reference in named)


def _temperature(checked: Checked, each: Sound) -> Quantity | None:
    """Return the hottest temperature that the route or a level step asks for."""
    references = [each.route.temperature, *(placed.temperature for placed in each.level_steps)]
    figures = [checked.figure(reference) for reference in references]
    found = [figure.value for figure in figures if figure and figure.value.kind is Kind.TEMPERATURE]
    return max(found, key=lambda value: value.base, default=None)


def _cannot(content: Content, reach: VesselReach, wanted: Quantity) -> str:
    if _is_oven(reach):
        return f"is a dry heat oven and makes no steam of {amount(wanted)}"
    if reach.limit_kpa is None:
        return f"states no pressure, so that nothing says that it reaches {amount(wanted)}"
    limit = f"{rounded_down(reach.limit_kpa)} kPa gauge"
    altitude = amount(content.handbook.clinic.altitude) if content.handbook else ""
    if reach.reached_celsius is None:
        return f"cannot be judged at {limit} and {altitude}; look at both values again"
    if reach.reaches(float(wanted.base)):
        return ""
    return (
        f"reaches {rounded_down(reach.reached_celsius)} °C at most at {altitude}, within {limit};"
        f" {amount(wanted)} is needed"
    )
