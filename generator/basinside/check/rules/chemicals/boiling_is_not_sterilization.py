"""The rule boiling-is-not-sterilization."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.taken_over import taken_over
from basinside.model.words import RouteKind
from basinside.problem import Level

NEVER_STERILE: Final[frozenset[RouteKind]] = frozenset({"boiling", "wiping"})


@rule(level=Level.NEVER)
def check_boiling_is_not_sterilization(checked: Checked) -> Iterator[Finding]:
    """Boiling and wiping reach no sterile level, and stand in no stage of that name.

    Why: spores live through boiling, however long, and a wipe reaches no place that the cloth does
    not. Who calls a boiled set sterile takes it for a birth or an operation. Read from the fields:
    the level of a route, what it `reaches` on an instrument, and the stage of the step that holds.
    Bad: `route: boil`, `kind: boiling`, `level: sterile`.
    Good: `level: high-level disinfection`, its `expose` in the stage `disinfection`.
    Source: IARC, Reference manual for screening, 2005, appendix C and p.130 (boiling for 20 minutes
    is high-level disinfection); CDC, Guideline for disinfection and sterilization, 2008.
    """
    routes = checked.content.routes
    for route in routes.values():
        if route.kind in NEVER_STERILE and route.level == "sterile":
            yield Finding(
                route.place.at("level"),
                f"{route.route} is {route.kind}, which makes nothing sterile",
                "Write the level that it reaches; boiling reaches high-level disinfection.",
            )
    for instrument in checked.content.instruments.values():
        for name, reaches in instrument.reaches.items():
            by = routes.get(name)
            if taken_over(instrument, reaches.place):
                continue
            if by and by.kind in NEVER_STERILE and reaches.level == "sterile":
                yield Finding(
                    reaches.place.at("level"),
                    f"{instrument.instrument} is not made sterile by {name}: {by.kind} makes"
                    " nothing sterile",
                    "Write the level that its source gives.",
                )
    for each in checked.sound:
        if each.route.kind not in NEVER_STERILE:
            continue
        for placed in each.level_steps:
            if placed.stage.stage == "sterilization":
                yield Finding(
                    placed.step.place,
                    f"{each.name} has {placed.step.step} in the stage sterilization; by"
                    f" {each.route.kind} nothing is sterilized",
                    "Move it to the stage disinfection.",
                )
