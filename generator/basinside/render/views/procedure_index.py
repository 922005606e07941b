"""The list of all procedures, by instrument."""

from __future__ import annotations

from basinside.model.instrument import Instrument
from basinside.render.view_types import (
    LinkView,
    ProcedureGroupView,
    ProcedureIndexView,
    ProcedureRowView,
    plain,
)
from basinside.render.views.spot import Spot, fact, present, state
from basinside.render.views.titles import procedure_title
from basinside.render.wording import _, sentence


def procedure_index_view(spot: Spot) -> ProcedureIndexView:
    """Return the list of all procedures, by instrument."""
    content = spot.desk.content
    groups = []
    for instrument in content.instruments.values():
        names = spot.desk.procedures_of(instrument.instrument)
        if names:
            groups.append(_group(spot, instrument, names))
    return ProcedureIndexView(
        title=_("Procedures"),
        lead=plain(_("Find the instrument in your hand. Look at how it is marked.")),
        groups=tuple(groups),
        sheets_heading=_("Watch someone work"),
        sheets_anchor="observe",
        sheets=tuple(
            LinkView(
                text=procedure_title(spot.desk.whole(name)),
                href=spot.link(f"print/observation-{name}.html"),
                note=_("observation sheet, to print, tick and sign"),
            )
            for name in content.procedures
        ),
    )


def _group(spot: Spot, instrument: Instrument, names: list[str]) -> ProcedureGroupView:
    rows = []
    for name in names:
        whole = spot.desk.whole(name)
        route = whole.route
        rows.append(
            ProcedureRowView(
                link=LinkView(
                    text=route.name if route else procedure_title(whole),
                    href=spot.link(f"procedures/{name}.html"),
                ),
                facts=present(
                    fact(_("Reaches"), sentence(whole.level or "")),
                    fact(_("About"), whole.about.text()),
                    fact(_("Steps"), str(len(whole.steps))),
                ),
            )
        )
    marked = instrument.applies_to.marked if instrument.applies_to else ""
    return ProcedureGroupView(
        anchor=instrument.instrument,
        name=instrument.name,
        href=spot.link(f"instruments/{instrument.instrument}.html"),
        note=spot.prose(_("Marked: {how}").format(how=state(marked)) if marked else ""),
        picture=spot.picture(instrument.assembled or instrument.drawing, ""),
        rows=tuple(rows),
    )
