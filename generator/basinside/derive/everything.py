"""All that follows from the model, once, for rules and pages alike."""

from __future__ import annotations

from collections.abc import Mapping

from basinside.derive.amounts.ground import own_measures
from basinside.derive.amounts.usual import clinic_amounts
from basinside.derive.checklists import checklist_for
from basinside.derive.editions import compare, differs, edition_document
from basinside.derive.levels import gravest_contact, highest_needed, needed_level
from basinside.derive.plans import marking_plan
from basinside.derive.routes import judge_routes
from basinside.derive.shift import clinic_shift
from basinside.derive.steps import place_steps
from basinside.derive.vessels import clinic_vessels
from basinside.derive.wall_charts import ChartMaker
from basinside.model.content import Content
from basinside.model.derived import (
    Derived,
    SinceClosed,
    VesselReach,
    WholeInstrument,
    WholeProcedure,
)
from basinside.model.instrument import Instrument
from basinside.model.on_use import OnUse


def derive(content: Content, before: tuple[Content, Derived] | None = None) -> Derived:
    """Return what follows from a model; a gap in the model stays a gap.

    Args:
        content: the model.
        before: an earlier model and what followed from it; what rests on the very same entries is
            taken over.
    """
    same = _unchanged(content, before)
    procedures = {
        name: same.get(id(procedure)) or place_steps(content, procedure)
        for name, procedure in content.procedures.items()
    }
    vessels = clinic_vessels(content)
    instruments = {
        name: _instrument(content, instrument, vessels)
        for name, instrument in content.instruments.items()
    }
    charts = ChartMaker(content)
    wall_charts = OnUse(procedures, lambda name: charts.chart(procedures[name]))
    asked = {each.item.item: each.item for each in content.items("practice")}
    return Derived(
        procedures=procedures,
        instruments=instruments,
        vessels={each.vessel.vessel: each for each in vessels},
        checklists=OnUse(procedures, lambda name: checklist_for(content, procedures[name])),
        plans=OnUse(asked, lambda name: marking_plan(asked[name], figures=content.figures)),
        since=_since_closed(content),
        wall_charts=wall_charts,
        measures=tuple(own_measures(content)),
        make_amounts=lambda: clinic_amounts(content, vessels, tuple(procedures.values())),
        make_shift=lambda: clinic_shift(content, procedures, instruments, vessels),
        find_too_long=lambda: {
            name: wall_charts[name]
            for name, whole in procedures.items()
            if not charts.surely_fits(whole) and not wall_charts[name].fits
        },
    )


def _since_closed(content: Content) -> dict[str, SinceClosed]:
    if not content.editions:
        return {}
    asked = {content.handbook.edition} if content.handbook else set()
    asked.update(each.item.rests_on.read_in for each in content.items() if each.item.rests_on)
    closed = {name: each for name, each in content.editions.items() if name in asked}
    if not closed:
        return {}
    now = edition_document(content)
    return {
        name: SinceClosed(changes=compare(each, now), same=not differs(each, now))
        for name, each in closed.items()
    }


def _unchanged(
    content: Content, before: tuple[Content, Derived] | None
) -> dict[int, WholeProcedure]:
    """Return what followed for procedures whose instrument, route, values and chemicals stayed."""
    if before is None:
        return {}
    old, derived = before
    if not (_same(old.figures, content.figures) and _same(old.agents, content.agents)):
        return {}
    return {
        id(whole.procedure): whole
        for whole in derived.procedures.values()
        if content.instrument_of(whole.procedure) is whole.instrument
        and content.route_of(whole.procedure) is whole.route
    }


def _same(old: Mapping[str, object], new: Mapping[str, object]) -> bool:
    return old.keys() == new.keys() and all(old[name] is new[name] for name in old)


def _instrument(
    content: Content, instrument: Instrument, vessels: tuple[VesselReach, ...]
) -> WholeInstrument:
    return WholeInstrument(
        instrument=instrument,
        needed={part.part: needed_level(part) for part in instrument.parts},
        highest=highest_needed(instrument),
        gravest=gravest_contact(instrument),
        verdicts=judge_routes(content, instrument, vessels),
    )
