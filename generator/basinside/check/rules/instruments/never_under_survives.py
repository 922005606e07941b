"""The rule never-under-survives."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.check.under import Under, goes_into, goes_under
from basinside.model.equipment import Route
from basinside.model.instrument import Instrument, Part
from basinside.problem import Level


@rule(level=Level.STOP)
def check_never_under_survives(checked: Checked) -> Iterator[Finding]:
    """A part that must never go under does not survive a route that puts it under.

    Why: one page says that the pump is ruined by water and another that it stands the bath. Whoever
    reads the second one puts it in.
    Where `immersion` says `never` for boiling or for a chemical, at the part or else at its
    instrument, `survives` says `no` for each route of that kind. What may never boil stands no
    steam either, which is hotter and as wet.
    Bad: `immersion: {chemical: never}` and `survives: {routes: {chlorine-hld: yes}}`.
    Good: `immersion: {chemical: never}` and `survives: {routes: {chlorine-hld: no}}`.
    Source: the maker's instructions, cited at `survives`.
    """
    routes = checked.content.routes
    for instrument in checked.content.instruments.values():
        for part in instrument.parts:
            if part.survives is None:
                continue
            against = [
                name
                for name, stands in part.survives.routes.items()
                if stands and name in routes and _never(instrument, part, routes[name])
            ]
            if against:
                yield Finding(
                    part.survives.place,
                    f"the {part.shown_name} of {instrument.instrument} must never go under, and is"
                    f" said to survive {listed(against)} ({checked.cited(part.survives.source)})",
                    "Read the instructions again, and mend one of the two.",
                    (part.place, instrument.place),
                )


def _never(instrument: Instrument, part: Part, route: Route) -> bool:
    kind: Under | None = "boiling" if route.kind == "steam" else goes_into(route)
    return kind is not None and goes_under(instrument, part, kind) == "never"
