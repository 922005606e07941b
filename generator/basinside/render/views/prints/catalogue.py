"""All the paper of a handbook: which sheets there are, what each is called, how each is made."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import partial
from typing import Final

from basinside.model.at_hand import route_not_had
from basinside.render.view_types.prints import SheetView
from basinside.render.views.prints.boiling_and_gauge import boiling_and_gauge_view, vessel_sheets
from basinside.render.views.prints.chemical_accidents import chemical_accident_view
from basinside.render.views.prints.dilution import dilution_card_view, has_dilutions
from basinside.render.views.prints.exposure import exposure_card_view
from basinside.render.views.prints.labels import solution_label_view, solutions
from basinside.render.views.prints.load_record import load_record_view
from basinside.render.views.prints.log_frame import writing_steps
from basinside.render.views.prints.logs import (
    boiling_log_view,
    soak_log_view,
    strength_check_log_view,
)
from basinside.render.views.prints.tally import units_by_sheet, use_tally_view
from basinside.render.views.prints.tests_and_cleaning import cleaning_log_view, test_log_view
from basinside.render.views.prints.wall_chart import wall_chart_view
from basinside.render.views.prints.which_accidents import chemical_accidents
from basinside.render.views.spot import Spot
from basinside.render.views.titles import procedure_title
from basinside.render.wording import _

CARDS: Final = (
    "exposure-card",
    "chemical-accident-card",
    "dilution-card",
    "boiling-and-gauge-card",
)
LOGS: Final = (
    "soak-log",
    "boiling-log",
    "load-record",
    "test-log",
    "cleaning-log",
    "strength-check-log",
)
"""Logs that steps write in have the id of the equipment that those steps name."""
KINDS: Final = (*CARDS, "wall-chart", *LOGS, "solution-label", "use-tally")
"""The kinds of paper, in the order in which a new clinic needs them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Print:
    """One sheet: its kind, what it is about (a procedure or an instrument), and what makes it.

    ``name`` is the name of its file without the ending, ``short`` what lists call it.
    """

    kind: str
    of: str
    name: str
    short: str
    view: Callable[[Spot], SheetView]

    @property
    def path(self) -> str:
        """Its page in the folder."""
        return f"print/{self.name}.html"


def kind_words(kind: str) -> str:
    """Return what a kind of paper is called."""
    return {
        "exposure-card": _("Exposure card"),
        "chemical-accident-card": _("Card of chemical accidents"),
        "dilution-card": _("Dilution card"),
        "boiling-and-gauge-card": _("Boiling and gauge card"),
        "wall-chart": _("Wall chart"),
        "soak-log": _("Soak log"),
        "boiling-log": _("Boiling log"),
        "load-record": _("Load record"),
        "test-log": _("Test log"),
        "cleaning-log": _("Cleaning log"),
        "strength-check-log": _("Strength-check log"),
        "solution-label": _("Solution labels"),
        "use-tally": _("Use tally"),
    }[kind]


def prints(spot: Spot) -> Iterator[Print]:
    """Yield every sheet that this handbook has something to put on."""
    there = _there(spot)
    for kind in KINDS:
        if kind == "wall-chart":
            yield from _wall_charts(spot)
        elif kind == "use-tally":
            yield from _tallies(spot)
        elif kind == "boiling-and-gauge-card" and kind in there:
            yield from _gauge_cards(spot)
        elif kind in there:
            yield Print(kind=kind, of="", name=kind, short=kind_words(kind), view=SINGLE[kind])


SINGLE: Final[dict[str, Callable[[Spot], SheetView]]] = {
    "exposure-card": exposure_card_view,
    "chemical-accident-card": chemical_accident_view,
    "dilution-card": dilution_card_view,
    "soak-log": soak_log_view,
    "boiling-log": boiling_log_view,
    "load-record": load_record_view,
    "test-log": test_log_view,
    "cleaning-log": cleaning_log_view,
    "strength-check-log": strength_check_log_view,
    "solution-label": solution_label_view,
}


def _there(spot: Spot) -> set[str]:
    """Return the kinds of single sheets for which the clinic has what they are about."""
    content, amounts = spot.desk.content, spot.desk.derived.amounts
    has = content.handbook.clinic.has if content.handbook else ()
    ways = {content.routes[name].kind for name in has if name in content.routes}
    own = solutions(spot)
    asked = {
        "exposure-card": bool(content.incidents),
        "chemical-accident-card": bool(chemical_accidents(spot)),
        "dilution-card": has_dilutions(amounts.usual),
        "boiling-and-gauge-card": bool(amounts.of("gauge")) or "boiling" in ways,
        "soak-log": "chemical" in ways,
        "boiling-log": "boiling" in ways,
        "load-record": "steam" in ways,
        "test-log": False,
        "cleaning-log": False,
        "strength-check-log": any(each.agent.strength_check for each in own),
        "solution-label": bool(own),
    }
    return {
        kind
        for kind, there in asked.items()
        if content.handbook is not None
        and (there or (kind in LOGS and any(writing_steps(spot, kind))))
    }


def _gauge_cards(spot: Spot) -> Iterator[Print]:
    kind = "boiling-and-gauge-card"
    for sheet, _vessels in enumerate(vessel_sheets(spot.desk.derived.amounts)):
        yield Print(
            kind=kind,
            of="",
            name=f"{kind}-{sheet + 1}" if sheet else kind,
            short=kind_words(kind),
            view=partial(boiling_and_gauge_view, sheet=sheet),
        )


def _wall_charts(spot: Spot) -> Iterator[Print]:
    for name, whole in spot.desk.derived.procedures.items():
        if whole.steps and route_not_had(spot.desk.content, whole) is None:
            yield Print(
                kind="wall-chart",
                of=name,
                name=f"wall-chart-{name}",
                short=procedure_title(whole),
                view=partial(_wall_chart, name),
            )


def _wall_chart(name: str, spot: Spot) -> SheetView:
    return wall_chart_view(spot, spot.desk.whole(name))


def _tallies(spot: Spot) -> Iterator[Print]:
    for name, instrument in spot.desk.content.instruments.items():
        for sheet, units in enumerate(units_by_sheet(spot, instrument)):
            more = f"-{sheet + 1}" if sheet else ""
            yield Print(
                kind="use-tally",
                of=name,
                name=f"use-tally-{name}{more}",
                short=_("{name}: {first} to {last}").format(
                    name=instrument.name, first=units[0], last=units[-1]
                ),
                view=partial(_tally, name, sheet),
            )


def _tally(name: str, sheet: int, spot: Spot) -> SheetView:
    return use_tally_view(spot, spot.desk.content.instruments[name], sheet)
