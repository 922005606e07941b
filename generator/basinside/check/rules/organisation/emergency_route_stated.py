"""The rule emergency-route-stated."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.STOP)
def check_emergency_route_stated(checked: Checked) -> Iterator[Finding]:
    """For each instrument of several patients it stands there what is done when none is ready.

    Why: the bath is empty, the fuel is out, and a newborn does not breathe. What is done then is
    thought out beforehand, by two people, and not invented at the bedside.
    Bad: an instrument that no rule under `emergency` names.
    Good: `emergency: [{for: [bag-mask], when: ..., do: ..., by: ..., second: ..., on: ...}]`.
    Source: common practice.
    """
    handbook = checked.content.handbook
    if handbook is None:
        return
    named = {name for each in handbook.clinic.emergency for name in each.for_}
    for name, instrument in checked.content.instruments.items():
        if instrument.label == "several patients" and name not in named:
            yield Finding(
                handbook.clinic.place.at("emergency"),
                f"nothing says what is done when no {instrument.name} is ready ({name})",
                "Name it under “for:” of a rule under “emergency:”.",
                (instrument.place,),
            )
