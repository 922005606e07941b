"""The rule lumens-not-in-short-cycle."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.STOP)
def check_lumens_not_in_short_cycle(checked: Checked) -> Iterator[Finding]:
    """Nothing hollow goes through a short cycle.

    Why: air sits in a tube and steam needs time to push it out. The short cycle of three minutes
    is printed for solid metal; the same tables give ten to what has a lumen.
    Bad: a cannula with `lumen: yes` on a route with `short_cycle: yes`.
    Good: the cannula on the full cycle, the forceps on the short one.
    Source: CDC, Guideline for disinfection and sterilization in healthcare facilities, 2008,
    table 8 (132 °C, gravity: 3 minutes without lumens, 10 minutes with them).
    """
    for each in checked.sound:
        if not each.route.short_cycle:
            continue
        for part in each.whole.parts:
            if part.lumen:
                yield Finding(
                    each.whole.procedure.place.at("route"),
                    f"{each.name} takes {part.shown_name}, which is hollow, through"
                    f" {each.route.route}, a short cycle for what is solid",
                    "Take a route with the full time.",
                    (part.place, each.instrument.place, each.route.place),
                )
