"""What all logs have in common: limits above, columns, as many empty rows as there is room for."""

from __future__ import annotations

from typing import Final

from basinside.model.derived import PlacedStep
from basinside.render.view_types import FactView, plain
from basinside.render.view_types.prints import LogColumnView, LogView, SheetView
from basinside.render.views.prints.frame import foot, notices, print_hint
from basinside.render.views.spot import Spot

ROW_MM: Final = 9.6
TIME_MM: Final = 7.7
FREE_MM: Final = 212.0
"""The height that one sheet has for limits, rows and notes; that of a row, and that of a line of
a row that has a line for each time."""
LINE_MM: Final = 5.4
LETTERS_A_LINE: Final = 85
MOST_ROWS, LEAST_ROWS = 22, 6


def log_sheet_view(
    spot: Spot,
    kind: str,
    title: str,
    lead: str,
    limits: tuple[FactView, ...],
    columns: tuple[LogColumnView, ...],
    notes: tuple[str, ...],
    *,
    times: tuple[str, ...] = (),
) -> SheetView:
    """Return a log as one sheet.

    Args:
        spot: the page.
        kind: the print's kind, which is the id of the log where steps write in it.
        title: its name.
        lead: how it is filled in.
        limits: what its entries must keep to.
        columns: its columns, from left to right.
        notes: what to do when an entry is not good.
        times: what each row is read at, when that is more than once.
    """
    row = TIME_MM * len(times) if times else ROW_MM
    return SheetView(
        kind="log",
        title=title,
        lead=plain(lead),
        hint=print_hint(),
        notices=notices(spot),
        foot=foot(spot, kind, ring="processing"),
        log=LogView(
            limits=limits,
            columns=columns,
            rows=_rows(limits, notes, row, LEAST_ROWS // len(times) if times else LEAST_ROWS),
            times=times,
            notes=tuple(plain(each) for each in notes),
        ),
    )


def _rows(limits: tuple[FactView, ...], notes: tuple[str, ...], row: float, least: int) -> int:
    """Return how many empty rows the sheet has room for."""
    texts = [
        *(each.label + "".join(span.text for span in each.text) for each in limits),
        *notes,
    ]
    lines = sum(1 + len(each) // LETTERS_A_LINE for each in texts)
    free = FREE_MM - lines * LINE_MM - len(notes) * LINE_MM / 2
    return max(least, min(MOST_ROWS, int(free / row)))


def column(head: str, width: int, note: str = "", *, each_time: bool = False) -> LogColumnView:
    """Return a column; ``width`` is its share in hundredths."""
    return LogColumnView(head=head, width=width, note=note, each_time=each_time)


def writing_steps(spot: Spot, log: str) -> list[tuple[str, PlacedStep]]:
    """Return the steps that use a log, by the id of its equipment, and their procedures."""
    return spot.desk.steps_with.get(log, [])
