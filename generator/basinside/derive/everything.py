"""All that follows from the model, once, for rules and pages alike."""

from __future__ import annotations

from basinside.derive.checklists import checklist_for
from basinside.derive.editions import compare, differs, edition_document
from basinside.derive.levels import gravest_contact, highest_needed, needed_level
from basinside.derive.plans import marking_plan
from basinside.derive.routes import judge_routes
from basinside.derive.steps import place_steps
from basinside.derive.vessels import clinic_vessels
from basinside.model.content import Content
from basinside.model.derived import Derived, SinceClosed, WholeInstrument
from basinside.model.instrument import Instrument


def derive(content: Content) -> Derived:
    """Return what follows from a model; a gap in the model stays a gap."""
    procedures = {
        name: place_steps(content, procedure) for name, procedure in content.procedures.items()
    }
    return Derived(
        procedures=procedures,
        instruments={
            name: _instrument(content, instrument)
            for name, instrument in content.instruments.items()
        },
        vessels={each.vessel.vessel: each for each in clinic_vessels(content)},
        checklists={name: checklist_for(content, whole) for name, whole in procedures.items()},
        plans={
            asked.item.item: marking_plan(asked.item) for asked in content.items("practice")
        },
        since=_since_closed(content),
    )


def _since_closed(content: Content) -> dict[str, SinceClosed]:
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


def _instrument(content: Content, instrument: Instrument) -> WholeInstrument:
    return WholeInstrument(
        instrument=instrument,
        needed={part.part: needed_level(part) for part in instrument.parts},
        highest=highest_needed(instrument),
        gravest=gravest_contact(instrument),
        verdicts=judge_routes(content, instrument),
    )
