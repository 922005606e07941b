"""The use tally: a numbered box for each use of each marked unit, up to the limit."""

from __future__ import annotations

from typing import Final

from basinside.model.instrument import Instrument
from basinside.render.view_types import BlankView
from basinside.render.view_types.prints import SheetView, TallyUnitView, TallyView
from basinside.render.views.parts import retire_facts
from basinside.render.views.prints.frame import (
    foot,
    joined,
    notices,
    paper_prose,
    print_hint,
    unlinked,
)
from basinside.render.views.spot import Spot, fact, state
from basinside.render.wording import _

BOXES_A_ROW: Final = 9
ROWS_A_SHEET: Final = 13
"""Rows of boxes that one sheet has room for; the head of a unit takes as much as one."""


def limit_of(spot: Spot, instrument: Instrument) -> int:
    """Return how often a unit of an instrument may be used; 0 when it is not counted."""
    limit = instrument.use_limit
    figure = spot.desk.content.figures.get(limit.at.figure) if limit else None
    return int(figure.value.number) if figure and instrument.units else 0


def units_by_sheet(spot: Spot, instrument: Instrument) -> tuple[tuple[str, ...], ...]:
    """Return the marked units that stand on each sheet."""
    limit = limit_of(spot, instrument)
    if not limit:
        return ()
    rows = 1 + -(-limit // BOXES_A_ROW)
    a_sheet = max(1, ROWS_A_SHEET // rows)
    units = instrument.units
    return tuple(units[n : n + a_sheet] for n in range(0, len(units), a_sheet))


def use_tally_view(spot: Spot, instrument: Instrument, sheet: int) -> SheetView:
    """Return one sheet of the tally of an instrument; ``sheet`` counts from 0."""
    limit = limit_of(spot, instrument)
    use = instrument.use_limit
    return SheetView(
        kind="tally",
        title=_("Uses: {name}").format(name=instrument.name),
        lead=joined(
            _("A box is one use. Write the day in it. At most "),
            unlinked(spot.value_prose(use.at if use else None)),
            _(" for each unit. "),
            paper_prose(spot, state(use.counts) if use else ""),
        ),
        hint=print_hint(),
        notices=notices(spot),
        foot=foot(spot, "use-tally", instrument.instrument, ring="processing"),
        tally=TallyView(
            units=tuple(
                TallyUnitView(
                    mark=mark,
                    boxes=tuple(str(n) for n in range(1, limit + 1)),
                    blanks=(
                        BlankView(label=_("First used on"), width=2),
                        BlankView(label=_("Retired on, why"), width=2),
                    ),
                )
                for mark in units_by_sheet(spot, instrument)[sheet]
            ),
            ends_heading=_("A failed test always beats the count. Signs that its life is over:"),
            ends=tuple(
                fact(each.label, unlinked(each.text)) for each in retire_facts(spot, instrument)
            ),
        ),
    )
