"""The rule recall-and-failure-procedure-present."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.model.at_hand import route_not_had
from basinside.model.words import IncidentKind, RouteKind
from basinside.problem import Level

_BY_ROUTE: Final[dict[RouteKind, tuple[IncidentKind, ...]]] = {
    "steam": ("failed load", "recall", "used unprocessed"),
    "dry heat": ("failed load", "recall", "used unprocessed"),
    "chemical": ("failed bath",),
}
"""What can fail on each kind of route (HAN 382 asks for a procedure for each)."""


@rule(level=Level.STOP, of_all=True)
def check_recall_and_failure_procedure_present(checked: Checked) -> Iterator[Finding]:
    """There is a page for the load that failed, the bath that failed, and what must come back.

    Why: a hospital that finds a load unsterile in the evening has no time to think out how packs
    are found again. A health advisory to all hospitals asks for a procedure for each recognised
    failure.
    Where steam or dry heat is used: incidents of the kinds `failed load`, `recall` and
    `used unprocessed`. Where a bath is used: one of the kind `failed bath`.
    Bad: a steam procedure, and incidents about splashes only.
    Good: `kinds: [failed load]` at the incident that says what is done then.
    Source: CDC and FDA, health advisory HAN 382, 2015; CDC, Guideline for disinfection and
    sterilization in healthcare facilities, 2008, monitoring.
    """
    handbook = checked.content.handbook
    if handbook is None:
        return
    there = {kind for each in checked.content.incidents.values() for kind in each.kinds}
    missing: dict[str, list[IncidentKind]] = {}
    for kind, said in _asked(checked).items():
        if kind not in there:
            missing.setdefault(said, []).append(kind)
    for said, kinds in missing.items():
        what = listed([f"“{kind}”" for kind in kinds])
        each = "" if len(kinds) == 1 else ", or one for each"
        yield Finding(
            handbook.clinic.place,
            f"{said}, and no incident says what is done about {what}",
            f"Write an incident with “kinds: [{', '.join(kinds)}]”{each}.",
        )


def _asked(checked: Checked) -> dict[IncidentKind, str]:
    """Return the kinds of incident that can happen here, each with why."""
    asked: dict[IncidentKind, str] = {}
    for each in checked.sound:
        if route_not_had(checked.content, each.whole) is not None:
            continue
        for kind in _BY_ROUTE.get(each.route.kind, ()):
            asked.setdefault(kind, f"{each.name} uses {each.route.name}")
    return asked
