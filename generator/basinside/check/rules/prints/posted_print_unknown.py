"""The rule posted-print-unknown."""

from __future__ import annotations

import difflib
from collections.abc import Iterator, Mapping
from typing import Final

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.model.content import Content
from basinside.model.handbook import Posted
from basinside.problem import Level

ALONE: Final = (
    "exposure-card",
    "dilution-card",
    "boiling-and-gauge-card",
    "soak-log",
    "boiling-log",
    "steam-load-log",
    "strength-check-log",
    "solution-label",
)
OF_PROCEDURE: Final = ("wall-chart", "observation")
OF_INSTRUMENT: Final = ("use-tally",)


@rule(level=Level.WARN)
def check_posted_print_unknown(checked: Checked) -> Iterator[Finding]:
    """What hangs on the wall is a print of this handbook.

    Why: the list of what hangs where is what somebody goes round with when an edition changes. A
    line that means no print sends them to look for a sheet that never was.
    Bad: `{print: wallchart, at: sink 1}`, or a wall chart `of` a procedure that is not there.
    Good: `{print: wall-chart, of: bag-mask-boil, at: sink 1}`, `{print: dilution-card, at: sink 2}`
    Source: common practice.
    """
    handbook = checked.content.handbook
    for each in handbook.posted if handbook else ():
        said = _wrong(checked.content, each)
        if said:
            yield Finding(each.place, *said)


def _wrong(content: Content, posted: Posted) -> tuple[str, str] | None:
    kind = posted.print
    if kind in OF_PROCEDURE:
        return _about(posted, content.procedures, "procedure")
    if kind in OF_INSTRUMENT:
        return _about(posted, content.instruments, "instrument")
    if kind in ALONE:
        if posted.of is None:
            return None
        return f"a {kind} is about the whole clinic, not “of: {posted.of}”", "Leave “of” out."
    near = difflib.get_close_matches(kind, (*ALONE, *OF_PROCEDURE, *OF_INSTRUMENT), 1)
    hint = f"Did you mean “{near[0]}”?" if near else "“basinside print --list” shows all prints."
    return f"there is no print “{kind}”", hint


def _about(posted: Posted, known: Mapping[str, object], what: str) -> tuple[str, str] | None:
    kind = posted.print
    if posted.of is None:
        return (
            f"a {kind} is of one {what}, and this line names none",
            f"Write “of: ” and the {what}.",
        )
    if posted.of in known:
        return None
    near = difflib.get_close_matches(posted.of, known, 1)
    hint = f"Did you mean “{near[0]}”?" if near else ""
    return f"there is no {what} “{posted.of}” for this {kind}", hint
