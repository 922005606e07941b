"""What each way back to the shelf needs of a shift: vessel, bath, supplies, protection, water.

A way is one procedure of a permitted route. It needs what its route lists, what its steps wear,
the water and chemicals its steps use, and of the other equipment what the author gave a kind.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from math import floor
from typing import Final, get_args

from basinside.model.content import Content
from basinside.model.derived import (
    RouteVerdict,
    VesselReach,
    WholeInstrument,
    WholeProcedure,
)
from basinside.model.equipment import Route
from basinside.model.handbook import Emergency
from basinside.model.procedure import Step
from basinside.model.shift import (
    NeedGroup,
    Shift,
    ShiftBath,
    ShiftInstrument,
    ShiftNeed,
    ShiftWay,
)
from basinside.quantity import Quantity
from basinside.units import Kind

GROUPS: Final = tuple(each for each in get_args(NeedGroup) if each != "vessel")
"""The groups in which a shift is asked, in the order of asking."""

WATERS: Final = frozenset({"water", "saline"})
SECONDS_IN_DAY: Final = 86_400
SECONDS_IN_MINUTE: Final = 60
SHORTEST_MONTH_DAYS: Final = 28
"""A month of a bath's life counts as the shortest there is: the safe side."""


def clinic_shift(
    content: Content,
    procedures: Mapping[str, WholeProcedure],
    instruments: Mapping[str, WholeInstrument],
    vessels: tuple[VesselReach, ...],
) -> Shift:
    """Return what a shift is asked for at this clinic, and what each way needs of it."""
    of_instruments: dict[str, list[WholeProcedure]] = {}
    for each in procedures.values():
        if each.instrument is not None:
            of_instruments.setdefault(each.instrument.instrument, []).append(each)
    shown = tuple(
        ShiftInstrument(
            instrument=whole.instrument,
            ways=tuple(_ways(content, of_instruments.get(name, ()), whole, vessels)),
            emergency=tuple(
                each for each in _emergency(content) if whole.instrument.instrument in each.for_
            ),
        )
        for name, whole in instruments.items()
        if whole.instrument.label != "single use"
    )
    ways = [way for each in shown for way in each.ways]
    return Shift(
        needs=_asked(content, ways),
        baths=tuple(
            _bath(content, procedures, route)
            for route in _routes(content)
            if route.kind == "chemical"
        ),
        instruments=tuple(sorted(shown, key=lambda each: _rank(content, each))),
    )


def _routes(content: Content) -> tuple[Route, ...]:
    has = content.handbook.clinic.has if content.handbook else ()
    return tuple(content.routes[each] for each in has if each in content.routes)


def _emergency(content: Content) -> tuple[Emergency, ...]:
    return content.handbook.clinic.emergency if content.handbook else ()


def _rank(content: Content, shown: ShiftInstrument) -> int:
    """Return the place of the first emergency rule for an instrument; last when there is none."""
    rules = _emergency(content)
    return rules.index(shown.emergency[0]) if shown.emergency else len(rules)


def _ways(
    content: Content,
    procedures: Iterable[WholeProcedure],
    instrument: WholeInstrument,
    vessels: tuple[VesselReach, ...],
) -> Iterator[ShiftWay]:
    for verdict in instrument.verdicts:
        for whole in procedures:
            if whole.route is not verdict.route or not _may(verdict, whole):
                continue
            yield ShiftWay(
                procedure=whole.procedure,
                route=verdict.route,
                parts=whole.parts,
                needs=tuple(dict.fromkeys(_needs(content, whole, verdict.route))),
                vessels=_vessels(verdict, whole, vessels),
                bath=verdict.route.route if verdict.route.kind == "chemical" else "",
                minutes=floor(whole.about.base / SECONDS_IN_MINUTE),
            )


def _may(verdict: RouteVerdict, whole: WholeProcedure) -> bool:
    """Whether nothing speaks against the route for any part that a procedure is for."""
    if verdict.permitted:
        return True
    fit = {each.part for each in verdict.fit}
    return bool(whole.parts) and all(each.part in fit for each in whole.parts)


def _vessels(
    verdict: RouteVerdict, whole: WholeProcedure, vessels: tuple[VesselReach, ...]
) -> tuple[str, ...]:
    able = verdict.vessels
    if verdict.route.kind == "dry heat":
        able = tuple(each for each in vessels if each.vessel.kind == "dry heat oven")
    named = whole.procedure.vessel
    return tuple(
        each.vessel.vessel for each in able if named is None or each.vessel.vessel == named
    )


def _needs(content: Content, whole: WholeProcedure, route: Route) -> Iterator[str]:
    equipment = content.equipment
    used = [
        *route.needs,
        *(each for placed in whole.steps for each in _of_kind(content, placed.step)),
    ]
    listed = any(equipment[name].kind == "water" for name in used if name in equipment)
    for name in used:
        if name in equipment and equipment[name].kind != "vessel":
            yield f"equipment/{name}"
    for placed in whole.steps:
        yield from (f"worn/{each.replace(' ', '-')}" for each in placed.wear)
        yield from _water(placed.step, listed=listed)
        agent = content.agents.get(placed.step.agent or "")
        in_bath = route.kind == "chemical" and placed.step.agent == route.agent
        if agent and not in_bath and agent.family not in WATERS:
            yield f"agent/{agent.agent}"


def _of_kind(content: Content, step: Step) -> list[str]:
    used = (*((step.in_,) if step.in_ else ()), *step.with_, *step.needs)
    return [each for each in used if each in content.equipment and content.equipment[each].kind]


def _water(step: Step, *, listed: bool) -> Iterator[str]:
    """Yield the water of a step, unless it is boiled water that the way lists by its own name."""
    if step.water and not (step.water == "boiled" and listed):
        yield f"water/{step.water}"


def _asked(content: Content, ways: Iterable[ShiftWay]) -> tuple[ShiftNeed, ...]:
    needs = [
        ShiftNeed(id=each, group=_group(content, each))
        for each in dict.fromkeys(need for way in ways for need in way.needs)
    ]
    return tuple(sorted(needs, key=lambda each: GROUPS.index(each.group)))


def _group(content: Content, need: str) -> NeedGroup:
    kind, _, name = need.partition("/")
    if kind == "equipment":
        return content.equipment[name].kind or "other"
    groups: dict[str, NeedGroup] = {"worn": "protection", "water": "water", "agent": "chemical"}
    return groups[kind]


def _bath(content: Content, procedures: Mapping[str, WholeProcedure], route: Route) -> ShiftBath:
    agent = content.agents.get(route.agent or "")
    figure = content.figures.get(agent.life.figure) if agent and agent.life else None
    life = figure.value if figure else None
    return ShiftBath(
        route=route,
        agent=agent,
        days=_whole_days(life) if life else None,
        within_a_day=life is not None and life.kind is Kind.TIME and life.base < SECONDS_IN_DAY,
        strip=bool(route.strength or (agent and agent.strength_check)),
        least=max(_temperatures(content, procedures, route), default=None),
        made_by=tuple(
            whole.procedure
            for whole in procedures.values()
            if whole.instrument is None and _mixes(whole, route)
        ),
    )


def _whole_days(life: Quantity) -> int | None:
    """Return a life in whole days, rounded down, at least one: the day on which it was made."""
    if life.kind is Kind.DAYS:
        return max(1, floor(life.base))
    if life.kind is Kind.MONTHS:
        return max(1, floor(life.base) * SHORTEST_MONTH_DAYS)
    if life.kind is Kind.TIME:
        return max(1, floor(life.base / SECONDS_IN_DAY))
    return None


def _temperatures(
    content: Content, procedures: Mapping[str, WholeProcedure], route: Route
) -> Iterator[Quantity]:
    asked = [route.temperature]
    for whole in procedures.values():
        if whole.route is route:
            asked += [
                each.step.temperature
                for each in whole.steps
                if each.step.action in {"measure strength", "expose"}
            ]
    for reference in asked:
        figure = content.figures.get(reference.figure) if reference else None
        if figure and figure.value.kind is Kind.TEMPERATURE:
            yield figure.value


def _mixes(whole: WholeProcedure, route: Route) -> bool:
    return any(each.step.action == "mix" and each.step.agent == route.agent for each in whole.steps)
