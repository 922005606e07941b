"""The rule wrapped-time-for-wrapped."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.steam_runs import SteamRun
from basinside.problem import Level


@rule(level=Level.STOP)
def check_wrapped_time_for_wrapped(checked: Checked) -> Iterator[Finding]:
    """What is wrapped gets the time for wrapped loads.

    Why: steam needs longer to get through a wrap; 20 minutes do for bare instruments and 30 for
    wrapped ones at the same heat. A route says for which of the two its time is.
    Bad: `wrap: yes` at a step of a procedure whose route has `wrapped: no`; or a wrapped load held
    for the value of the unwrapped route.
    Good: `wrap: yes` with a route that has `wrapped: yes`.
    Source: IARC, Reference manual for screening, 2005, p.126 and a consensus of 1991 (20 minutes
    unwrapped, 30 minutes wrapped); CDC, Guideline for disinfection and sterilization in healthcare
    facilities, 2008, table 7.
    """
    times = _times(checked)
    for run in checked.steam_runs:
        route = run.route
        if route is not None and route.wrapped is None:
            yield Finding(
                route.place,
                f"{route.route} does not say whether its time is for wrapped or for bare loads",
                "Write “wrapped: yes” or “wrapped: no”.",
            )
        yield from _steps(run)
        hold = run.start.step.hold
        said = run.start.step.wrap if run.start.step.wrap is not None else run.wrapped
        if said and hold is not None and times.get(hold.figure) == {False}:
            yield Finding(
                hold.place,
                f"{run.name} holds a wrapped load in {run.start.step.step} for {hold.figure},"
                " which is the time of a route for bare loads",
                "Write the value that the route for wrapped loads holds.",
                (run.whole.procedure.place, run.start.step.place),
            )


def _times(checked: Checked) -> dict[str, set[bool]]:
    """Return whether each time of a steam route is for wrapped loads, for bare ones, or both."""
    found: dict[str, set[bool]] = {}
    for route in checked.content.routes.values():
        if route.kind == "steam" and route.hold is not None and route.wrapped is not None:
            found.setdefault(route.hold.figure, set()).add(route.wrapped)
    return found


def _steps(run: SteamRun) -> Iterator[Finding]:
    route = run.route
    if route is None or route.wrapped is None:
        return
    for placed in run.whole.steps:
        wrap = placed.step.wrap
        if wrap is not None and wrap != route.wrapped:
            load, time = ("wrapped", "bare") if wrap else ("bare", "wrapped")
            yield Finding(
                placed.step.place.at("wrap"),
                f"{run.name} has a {load} load in {placed.step.step}, and the time of its route"
                f" {route.route} is for {time} ones",
                "Take a route for it, or mend “wrap:”.",
                (run.whole.procedure.place, placed.step.place),
            )
