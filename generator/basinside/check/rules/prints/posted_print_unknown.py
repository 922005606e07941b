"""The rule posted-print-unknown."""

from __future__ import annotations

import difflib
from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.model.at_hand import route_not_had
from basinside.model.handbook import Posted
from basinside.model.words import PRINTS_OF, PRINTS_OF_CLINIC
from basinside.problem import Level


@rule(level=Level.WARN)
def check_posted_print_unknown(checked: Checked) -> Iterator[Finding]:
    """What hangs on the wall is a print of this handbook.

    Why: the list of what hangs where is what somebody goes round with when an edition changes. A
    line that means no print sends them to look for a sheet that never was.
    Bad: `{print: wallchart, at: sink 1}`, or a wall chart that is not `of` any procedure, or of
    one whose route is not in `has`.
    Good: `{print: wall-chart, of: bag-mask-boil, at: sink 1}`, `{print: dilution-card, at: sink 2}`
    Source: common practice.
    """
    handbook = checked.content.handbook
    for each in handbook.posted if handbook else ():
        said = _wrong(each) or _set_aside(checked, each)
        if said:
            yield Finding(each.place, *said)


def _set_aside(checked: Checked, posted: Posted) -> tuple[str, str] | None:
    """Return what is said of the chart of a procedure whose route the clinic does not have."""
    whole = checked.derived.procedures.get(posted.of or "")
    if posted.print != "wall-chart" or whole is None:
        return None
    route = route_not_had(checked.content, whole)
    if route is None:
        return None
    said = f"the wall chart of {posted.of} is not for here: the clinic does not have {route.route}"
    mend = "Take it down and delete this line, or name the route in “has”."
    return said, f"It hangs here: {posted.at}. {mend}"


def _wrong(posted: Posted) -> tuple[str, str] | None:
    kind, of = posted.print, posted.of
    if kind in PRINTS_OF:
        what = PRINTS_OF[kind]
        if of is not None:
            return None
        said = f"a {kind} is of one {what}, and this line names none"
        return said, f"Write “of: ” and the {what}."
    if kind in PRINTS_OF_CLINIC:
        if of is None:
            return None
        return f"a {kind} is about the whole clinic, not “of: {of}”", "Leave “of” out."
    near = difflib.get_close_matches(kind, (*PRINTS_OF_CLINIC, *PRINTS_OF), 1)
    hint = f"Did you mean “{near[0]}”?" if near else "“basinside print --list” shows all prints."
    return f"there is no print “{kind}”", hint
