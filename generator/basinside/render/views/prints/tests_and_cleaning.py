"""The logs of function tests, and of what is washed at the end of a day."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.model.instrument import Instrument
from basinside.render.view_types import FactView, plain
from basinside.render.view_types.prints import SheetView
from basinside.render.views.prints.frame import joined, paper_prose
from basinside.render.views.prints.log_frame import column, log_sheet_view, writing_steps
from basinside.render.views.spot import Spot, fact
from basinside.render.wording import _

CHANGE_FIGURE: Final = "brush.change"
LEAST_LINES, MOST_LINES = 3, 6
LINES_WIDE: Final = 42
"""What the columns of the lines share, in hundredths of the sheet."""


def tested(spot: Spot) -> tuple[Instrument, ...]:
    """Return the instruments whose test is written in the test log."""
    content = spot.desk.content
    names = dict.fromkeys(
        content.procedures[name].instrument or "" for name, _step in writing_steps(spot, "test-log")
    )
    return tuple(
        content.instruments[name]
        for name in names
        if name in content.instruments and content.instruments[name].function_test
    )


def test_log_view(spot: Spot) -> SheetView:
    """Return the log of function tests: the unit, each line of its test, and by whom."""
    lines = max((len(each.function_test) for each in tested(spot)), default=LEAST_LINES)
    lines = min(max(lines, LEAST_LINES), MOST_LINES)
    return log_sheet_view(
        spot,
        "test-log",
        _("Test log"),
        _("One line for each test. Write YES under each line that passed, and NO where it failed."),
        tuple(_lines_of_tests(spot)),
        (
            column(_("Day"), 9),
            column(_("Unit"), 12, _("item and mark")),
            *(column(str(n), LINES_WIDE // lines) for n in range(1, lines + 1)),
            column(_("Mended"), 13, _("what, tested again")),
            column(_("Result"), 13, _("used, or OUT OF USE")),
            column(_("By"), 11, _("staff code")),
        ),
        (_("Failed twice: tie on OUT OF USE. A failed test always beats the count of uses."),),
    )


def _lines_of_tests(spot: Spot) -> Iterator[FactView]:
    """Yield what each line asks for; instruments with the same test share it."""
    by_test: dict[tuple[str, ...], list[str]] = {}
    for each in tested(spot):
        asked = tuple(line.expect for line in each.function_test[:MOST_LINES])
        by_test.setdefault(asked, []).append(each.name)
    for asked, names in by_test.items():
        numbered = (
            joined(f"{number} · ", paper_prose(spot, each), " ")
            for number, each in enumerate(asked, 1)
        )
        yield fact("; ".join(names), joined(*numbered))


def cleaning_log_view(spot: Spot) -> SheetView:
    """Return the log of the end of a day: what was washed, boiled, wiped and changed."""
    change = spot.desk.content.figures.get(CHANGE_FIGURE)
    limits = (
        (fact(_("Brushes"), joined(_("changed after "), plain(change.value.text()), ".")),)
        if change
        else ()
    )
    return log_sheet_view(
        spot,
        "cleaning-log",
        _("Cleaning log"),
        _("One line for each end of a day. Brushes, basins, boxes, cloths and the pot."),
        limits,
        (
            column(_("Day"), 9),
            column(_("Basins and boxes"), 13, _("washed, wiped")),
            column(_("Brushes, syringe"), 13, _("washed, how many")),
            column(_("Boils at"), 11, _("clock time")),
            column(_("Out at"), 11, _("not before")),
            column(_("Brushes changed"), 15, _("which, how many")),
            column(_("Hung up"), 9, _("to dry")),
            column(_("Pot"), 9, _("emptied")),
            column(_("By"), 10, _("staff code")),
        ),
        (_("Brush bent, dirty or too old: throw it away, and write it down."),),
    )
