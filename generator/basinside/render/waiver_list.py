"""All waivers of a clinic, for whoever looks them over: those that have ended first."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date
from typing import Any, NamedTuple

from basinside.model.entry import Waiver
from basinside.problem import Placed, one_line
from basinside.render.wording import _, n_

ABOUT_WAIVERS = frozenset(
    {
        "waiver-ended",
        "waiver-incomplete",
        "waiver-of-never",
        "waiver-unknown-rule",
        "waiver-without-effect",
    }
)


class WaiverLine(NamedTuple):
    """A waiver, where it stands, and whether its last day is past; None when no day is given."""

    waiver: Waiver
    file: str
    line: int
    column: int
    ended: bool | None
    wrong: tuple[str, ...] = ()


def waiver_lines(
    found: Iterable[tuple[Waiver, int, int]], problems: Sequence[Placed], today: date | None
) -> tuple[WaiverLine, ...]:
    """Return waivers in order: ended ones, then by last day, then by place.

    Args:
        found: each waiver with the line and the column it stands at.
        problems: what the check says; what it says of a waiver is kept beside it.
        today: the day, when it is given.
    """
    lines = []
    for waiver, line, column in found:
        here = waiver.place
        wrong = tuple(
            f"{one_line(each.problem.message)} [{each.problem.rule}]"
            for each in problems
            if each.problem.rule in ABOUT_WAIVERS
            if each.problem.place.file == here.file
            if each.problem.place.path[: len(here.path)] == here.path
        )
        ended = None if today is None else waiver.until is not None and waiver.until < today
        lines.append(WaiverLine(waiver, here.file, line, column, ended, wrong))
    return tuple(
        sorted(
            lines,
            key=lambda each: (
                not each.ended,
                each.waiver.until or date.min,
                each.file,
                each.line,
            ),
        )
    )


def waiver_list_lines(waivers: Sequence[WaiverLine], today: date | None) -> list[str]:
    """Return the list in words, line by line."""
    if not waivers:
        return [_("Nothing is waived.")]
    out: list[str] = []
    for each in waivers:
        waiver = each.waiver
        until = str(waiver.until) if waiver.until else _("no last day")
        state = _("ended on {day}") if each.ended else _("until {day}")
        out.append(
            _("{place}: {rule}, {state}").format(
                place=f"{each.file}:{each.line}:{each.column}",
                rule=one_line(waiver.rule),
                state=state.format(day=until),
            )
        )
        out.append("  " + one_line(waiver.because))
        out.append(
            _("  by {who} on {day}").format(
                who=one_line(" · ".join(filter(None, (waiver.by, waiver.second)))), day=waiver.on
            )
        )
        out.extend(f"  {said}" for said in each.wrong)
    count = n_("1 waiver", "{n} waivers", len(waivers))
    ended = sum(bool(each.ended) for each in waivers)
    if today is None:
        return [*out, _("{count}. Give --today DATE to see which have ended.").format(count=count)]
    past = (
        n_("1 of them has ended", "{n} of them have ended", ended) if ended else _("none has ended")
    )
    return [*out, _("{count}, {past}.").format(count=count, past=past)]


def waiver_list_data(waivers: Sequence[WaiverLine]) -> list[dict[str, Any]]:
    """Return the list for a tool."""
    return [
        {
            "file": each.file,
            "line": each.line,
            "column": each.column,
            "rule": each.waiver.rule,
            "because": each.waiver.because,
            "by": each.waiver.by,
            "second": each.waiver.second,
            "on": each.waiver.on.isoformat(),
            "until": each.waiver.until.isoformat() if each.waiver.until else None,
            "ended": each.ended,
            "wrong": list(each.wrong),
        }
        for each in waivers
    ]
