"""The rule route-without-procedure."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.WARN, of_all=True)
def check_route_without_procedure(checked: Checked) -> Iterator[Finding]:
    """A route that the clinic has is taken by a procedure.

    Why: a route that stands under `has` is offered on pages. With no procedure nobody knows its
    steps, and its bath or vessel is used from memory.
    Bad: `has: [steam]` and no procedure with `route: steam`.
    Good: a procedure that takes it; or `has` without it.
    Source: common practice.
    """
    handbook = checked.content.handbook
    if handbook is None:
        return
    taken = {procedure.route for procedure in checked.content.procedures.values()}
    for n, name in enumerate(handbook.clinic.has):
        route = checked.content.routes.get(name)
        if route is not None and name not in taken:
            yield Finding(
                handbook.clinic.place.at("has", n),
                f"the clinic has {name} ({route.name}), and no procedure takes it",
                "Write a procedure with it, or take it out of “has:”.",
                (route.place,),
            )
