"""The rule gauge-wrong-here."""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.saying import amount, rounded_down
from basinside.model.derived import PlacedStep
from basinside.model.figure import Figure
from basinside.model.prose import references
from basinside.problem import Level
from basinside.quantity import Quantity
from basinside.science.steam import gauge_pressure_kpa
from basinside.units import Kind


@rule(level=Level.NEVER)
def check_gauge_wrong_here(checked: Checked) -> Iterator[Finding]:
    """The gauge pressure that a step asks for gives its temperature here, within the mark.

    Why: a pressure is copied from a book, or from a clinic lower down. Higher up it gives cooler
    steam, and the pack is not sterile; above the mark of the vessel it can kill whoever stands
    there.
    Asked of each step with a temperature that names a gauge pressure in its “do” or its “wall”.
    Bad: `130 kPa gauge` for 121 °C at 3,000 m.
    Good: `135 kPa gauge` there, in a vessel marked for 150 kPa gauge.
    Source: IAPWS-IF97, region 4, for steam; ICAO standard atmosphere for the air.
    """
    handbook = checked.content.handbook
    if handbook is None:
        return
    altitude = handbook.clinic.altitude
    seen: set[tuple[str, str, str]] = set()
    for whole in checked.derived.procedures.values():
        vessel = whole.procedure.vessel or ""
        for placed in whole.steps:
            hot = checked.figure(placed.temperature)
            if hot is None or hot.value.kind is not Kind.TEMPERATURE:
                continue
            for name, figure in _gauges(checked, placed):
                if (name, vessel, amount(hot.value)) not in seen:
                    seen.add((name, vessel, amount(hot.value)))
                    said, hint = _wrong(checked, figure, vessel, hot.value, altitude)
                    if said:
                        step = f"{whole.procedure.procedure}/{placed.step.step}"
                        text = f"{step} asks for {amount(figure.value)}; {said}"
                        yield Finding(figure.place.at("value"), text, hint, (placed.step.place,))


def _gauges(checked: Checked, placed: PlacedStep) -> Iterator[tuple[str, Figure]]:
    for text in (placed.step.do, placed.step.wall or ""):
        for each in references(text):
            figure = checked.content.figures.get(each.figure)
            if figure is not None and figure.value.kind is Kind.GAUGE:
                yield each.figure, figure


def _wrong(
    checked: Checked, figure: Figure, vessel: str, hot: Quantity, altitude: Quantity
) -> tuple[str, str]:
    """Return what is wrong with a gauge pressure and its mend, or two empty texts."""
    shown = float(figure.value.base / 1000)
    reach = checked.derived.vessels.get(vessel)
    if reach and reach.limit_kpa is not None and shown > reach.limit_kpa:
        limit = rounded_down(reach.limit_kpa)
        return f"{vessel} must never pass {limit} kPa gauge", "Write less, or name another vessel."
    try:
        needed = gauge_pressure_kpa(float(hot.base), float(altitude.base))
    except ValueError:
        return "", ""
    if shown >= needed:
        return "", ""
    said = f"{amount(hot)} at {amount(altitude)} needs {ceil(needed)} kPa gauge"
    rest = "look at what else rests on the altitude"
    if reach and reach.limit_kpa is not None and needed > reach.limit_kpa:
        limit = rounded_down(reach.limit_kpa)
        return said, f"Name another vessel: {vessel} must never pass {limit} kPa gauge."
    return said, f"Write {ceil(needed)} kPa gauge or a little more, and {rest}."
