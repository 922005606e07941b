"""Problems as an author reads them: one line each, then what they add up to."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

from basinside.problem import Level, Placed
from basinside.render.view_types import StartView, plain
from basinside.render.wording import _, n_


def report_lines(placed: Iterable[Placed], *, everything: bool = False) -> list[str]:
    """Return one line for each problem in the order of places; ``info`` only when asked."""
    shown = sorted(placed, key=lambda each: each.order)
    return [str(each) for each in shown if everything or each.problem.level is not Level.INFO]


def summary_line(placed: Sequence[Placed]) -> str:
    """Return what the problems add up to."""
    stops = sum(each.problem.stops for each in placed)
    waived = sum(bool(each.problem.waived_by) for each in placed)
    warns = sum(each.problem.level is Level.WARN and not each.problem.waived_by for each in placed)
    parts = []
    if stops:
        parts.append(n_("1 problem stops the build", "{n} problems stop the build", stops))
    if warns:
        parts.append(n_("1 warning", "{n} warnings", warns))
    if waived:
        parts.append(n_("1 problem is waived by name", "{n} problems are waived by name", waived))
    return ", ".join(parts) + "." if parts else _("Nothing is wrong.")


def report_data(placed: Iterable[Placed]) -> list[dict[str, Any]]:
    """Return the problems for a tool."""
    return [
        {
            "file": each.problem.place.file,
            "line": each.line,
            "column": each.column,
            "rule": each.problem.rule,
            "level": str(each.problem.level),
            "message": each.problem.message,
            "hint": each.problem.hint,
            "waived_by": each.problem.waived_by,
            "stops": each.problem.stops,
        }
        for each in sorted(placed, key=lambda each: each.order)
    ]


def problem_view() -> StartView:
    """Return the page that preview shows while there is no good edition to show."""
    return StartView(
        title=_("Nothing to show yet"),
        lead=plain(_("Mend what stands above and save; this page comes back by itself.")),
        jobs_label=_("What do you want to do?"),
        jobs=(),
        bench_heading="",
        bench=(),
    )
