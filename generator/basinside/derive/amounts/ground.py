"""What the calculators stand on in this clinic, gathered from its content; gaps are empty."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Final, Literal

from basinside.derive.amounts.heights import heights
from basinside.derive.amounts.numbers import plain
from basinside.derive.amounts.typed import one_way
from basinside.model.amounts import (
    Ground,
    OwnHold,
    OwnLife,
    OwnMeasure,
    OwnSets,
    OwnStrength,
    OwnVessel,
)
from basinside.model.content import Content
from basinside.model.derived import VesselReach, WholeProcedure
from basinside.model.entry import FigureRef
from basinside.model.equipment import Route
from basinside.quantity import Quantity
from basinside.units import PPM_IN_PERCENT, Kind

TABLET_FIGURE: Final = "tablets.available"
BATH_FIGURE: Final = "chlorine.bath-volume"
SPILL_FIGURE: Final = "spill.strength"
ENOUGH_FIGURE: Final = "boil.enough-heat"
"""The ids under which a handbook keeps these, if it does."""

MEASURES: Final = ("jug", "syringe", "spoon", "cup", "bucket")
SECONDS_IN_MINUTE: Final = 60
MOST_PLACES: Final = 9  # decimals of a value that has no finite number of them


def clinic_ground(
    content: Content,
    vessels: tuple[VesselReach, ...],
    procedures: tuple[WholeProcedure, ...],
) -> Ground:
    """Return what the calculators stand on.

    Args:
        content: the clinic's model.
        vessels: what each vessel reaches.
        procedures: the procedures with about how long each takes.
    """
    clinic = content.handbook.clinic if content.handbook else None
    boil = next((each for each in content.routes.values() if each.kind == "boiling"), None)
    steam = [each for each in content.routes.values() if each.kind == "steam"]
    steam.sort(key=lambda route: not route.wrapped)  # the wrapped load is the usual one
    first = steam[0] if steam else None
    return Ground(
        altitude=one_way(_number(clinic.altitude if clinic else None, Kind.LENGTH)),
        liquid=one_way(_product(content, "liquid")),
        powder=one_way(_product(content, "powder")),
        tablet_grams=one_way(_figure(content, TABLET_FIGURE, Kind.MASS)),
        bath_litres=one_way(_figure(content, BATH_FIGURE, Kind.VOLUME, 1000)),
        boil_minutes=_of(content, boil.hold if boil else None, Kind.TIME, SECONDS_IN_MINUTE),
        enough_celsius=_figure(content, ENOUGH_FIGURE, Kind.TEMPERATURE),
        steam_celsius=one_way(_of(content, first.temperature if first else None, Kind.TEMPERATURE)),
        steam_minutes=one_way(
            _of(content, first.hold if first else None, Kind.TIME, SECONDS_IN_MINUTE)
        ),
        strengths=tuple(_strengths(content)),
        measures=tuple(own_measures(content)),
        vessels=tuple(_vessel(each) for each in vessels),
        holds=tuple(_holds(content)),
        lives=tuple(_lives(content)),
        sets=tuple(_sets(content, procedures)),
        heights=heights(),
    )


def _number(value: Quantity | None, kind: Kind, share: int = 1) -> str:
    if value is None or value.kind is not kind:
        return ""
    return plain(Fraction(round(value.base / share * 10**MOST_PLACES), 10**MOST_PLACES))


def _figure(content: Content, name: str, kind: Kind, share: int = 1) -> str:
    figure = content.figures.get(name)
    return _number(figure.value if figure else None, kind, share)


def _of(content: Content, reference: FigureRef | None, kind: Kind, share: int = 1) -> str:
    return _figure(content, reference.figure, kind, share) if reference else ""


def _product(content: Content, kind: str) -> str:
    for agent in content.agents.values():
        product = agent.product
        if agent.family == "chlorine" and product and product.kind == kind:
            return _number(product.strength, Kind.CHLORINE, PPM_IN_PERCENT)
    return ""


def _strengths(content: Content) -> Iterator[OwnStrength]:
    asked = [each.strength.figure for each in content.routes.values() if each.strength]
    for name in dict.fromkeys((*asked, SPILL_FIGURE)):
        figure = content.figures.get(name)
        percent = _figure(content, name, Kind.CHLORINE, PPM_IN_PERCENT)
        if figure and percent:
            called = next((r.name for r in content.routes.values() if _uses(r, name)), figure.is_)
            yield OwnStrength(figure=name, name=called, percent=one_way(percent))


def _uses(route: Route, strength: str) -> bool:
    return route.strength is not None and route.strength.figure == strength


def own_measures(content: Content) -> Iterator[OwnMeasure]:
    """Yield the clinic's own jugs, syringes and spoons."""
    for each in content.handbook.clinic.measures if content.handbook else ():
        for name in MEASURES:
            size: Quantity | None = getattr(each, name)
            if size is None or size.kind not in {Kind.VOLUME, Kind.MASS} or size.base <= 0:
                continue
            marks = _number(each.marks, size.kind) if each.marks else ""
            fits = marks not in {"", "0"} and Fraction(marks) <= size.base
            yield OwnMeasure(
                name=name,
                holds=_number(size, size.kind),
                marks=marks if fits else "",
                by_weight=size.kind is Kind.MASS,
            )


def _vessel(reach: VesselReach) -> OwnVessel:
    vessel = reach.vessel
    limit = "" if reach.limit_kpa is None else plain(Fraction(str(round(reach.limit_kpa, 1))))
    regulator = vessel.regulator
    return OwnVessel(
        vessel=vessel.vessel,
        name=vessel.name or vessel.vessel,
        kind=vessel.kind,
        limit=limit,
        weight=regulator is not None and regulator.kind == "fixed weight",
    )


def _holds(content: Content) -> Iterator[OwnHold]:
    longest: dict[str, str] = {}
    for procedure in content.procedures.values():
        for _stage, step in procedure.steps:
            if step.hold and step.hold.no_longer_than:
                longest.setdefault(step.hold.figure, step.hold.no_longer_than.figure)
    seen = set()
    for route in content.routes.values():
        figure = content.figures.get(route.hold.figure) if route.hold else None
        if route.hold is None or figure is None or route.hold.figure in seen:
            continue
        seen.add(route.hold.figure)
        seconds = _number(figure.value, Kind.TIME)
        late = _figure(content, longest.get(route.hold.figure, ""), Kind.TIME)
        if seconds.isdigit() and seconds != "0":
            yield OwnHold(
                figure=route.hold.figure,
                name=route.name,
                seconds=int(seconds),
                longest=int(late) if late.isdigit() else None,
            )


def _lives(content: Content) -> Iterator[OwnLife]:
    units: dict[Kind, Literal["day", "month"]] = {Kind.DAYS: "day", Kind.MONTHS: "month"}
    for name, agent in content.agents.items():
        figure = content.figures.get(agent.life.figure) if agent.life else None
        unit = units.get(figure.value.kind) if figure else None
        if figure and unit and figure.value.base >= 1:
            number = int(figure.value.base)
            yield OwnLife(agent=name, name=agent.name, number=number, unit=unit)


def _sets(content: Content, procedures: tuple[WholeProcedure, ...]) -> Iterator[OwnSets]:
    clinic = content.handbook.clinic if content.handbook else None
    for name, instrument in content.instruments.items():
        cases = clinic.cases_per_year.get(name) if clinic else None
        about = [
            int(each.about.base) // SECONDS_IN_MINUTE
            for each in procedures
            if each.instrument is instrument and each.route is not None
        ]
        if clinic and cases and any(about):
            yield OwnSets(
                instrument=name,
                name=instrument.name,
                cases_a_year=int(cases),
                reserve=int(clinic.ready_reserve.get(name, 0)),
                turnaround=max(about),
            )
