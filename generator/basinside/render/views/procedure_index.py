"""The list of all procedures, by instrument."""

from __future__ import annotations

from basinside.model.at_hand import route_not_had
from basinside.model.instrument import Instrument
from basinside.render.view_types import (
    LinkView,
    ProcedureGroupView,
    ProcedureIndexView,
    ProcedureRowView,
    plain,
)
from basinside.render.views.spot import Spot, fact, present, state
from basinside.render.views.titles import procedure_title, short_title
from basinside.render.wording import _, listed, sentence


def procedure_index_view(spot: Spot) -> ProcedureIndexView:
    """Return the list of all procedures, by instrument."""
    content = spot.desk.content
    groups = []
    for instrument in content.instruments.values():
        names = spot.desk.procedures_of(instrument.instrument)
        if names:
            groups.append(_group(spot, instrument, names))
    shared = [name for name, each in content.procedures.items() if each.instrument is None]
    if shared:
        groups.append(
            ProcedureGroupView(
                anchor="shared",
                name=_("Work around the basin"),
                note=plain(
                    _(
                        "Tasks that several procedures share: making up solutions, running a load,"
                        " looking after brushes and basins."
                    )
                ),
                rows=_rows(spot, shared),
            )
        )
    return ProcedureIndexView(
        title=_("Procedures"),
        lead=plain(_("Find the instrument in your hand. Look at how it is marked.")),
        jump_label=_("Jump to"),
        jump=tuple(LinkView(text=each.name, href=f"#{each.anchor}") for each in groups),
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
            if spot.desk.watched(name)
            and route_not_had(spot.desk.content, spot.desk.whole(name)) is None
        ),
    )


def _group(spot: Spot, instrument: Instrument, names: list[str]) -> ProcedureGroupView:
    marked = instrument.applies_to.marked if instrument.applies_to else ""
    return ProcedureGroupView(
        anchor=instrument.instrument,
        name=instrument.name,
        href=spot.link(f"instruments/{instrument.instrument}.html"),
        note=spot.prose(_("Marked: {how}").format(how=state(marked)) if marked else ""),
        picture=spot.picture(instrument.assembled or instrument.drawing, ""),
        rows=_rows(spot, names),
    )


def _rows(spot: Spot, names: list[str]) -> tuple[ProcedureRowView, ...]:
    return tuple(_row(spot, name) for name in names)


def _row(spot: Spot, name: str) -> ProcedureRowView:
    whole = spot.desk.whole(name)
    some = whole.instrument is not None and len(whole.parts) < len(whole.instrument.parts)
    return ProcedureRowView(
        link=LinkView(
            text=whole.route.name if whole.route else short_title(whole),
            href=spot.link(f"procedures/{name}.html"),
        ),
        facts=present(
            fact(_("Not possible here"), _("The clinic has no such way"))
            if route_not_had(spot.desk.content, whole)
            else None,
            fact(_("Only for"), listed([each.shown_name for each in whole.parts]))
            if some
            else None,
            fact(_("Reaches"), sentence(whole.level or "")),
            fact(_("About"), whole.about.text()),
            fact(_("Steps"), str(len(whole.steps))),
        ),
    )
