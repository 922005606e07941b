"""The rule instrument-without-procedure."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.WARN, of_all=True)
def check_instrument_without_procedure(checked: Checked) -> Iterator[Finding]:
    """Each instrument that is used again has a procedure.

    Why: an instrument that nobody says how to make safe is washed as somebody remembers it.
    A part that none of its procedures covers is told by part-tolerance-decides.
    What is for single use needs no procedure; what to do with one found on the shelf stands at it.
    Bad: an instrument with `label: several patients` that no procedure names.
    Good: `instrument: bulb` in a procedure with a route.
    Source: CDC and HICPAC, core practices, 2016 (every step for every device, from memory).
    """
    routed = {
        procedure.instrument
        for procedure in checked.content.procedures.values()
        if procedure.instrument and procedure.route
    }
    for name, instrument in checked.content.instruments.items():
        if instrument.label != "single use" and name not in routed:
            yield Finding(
                instrument.place,
                f"no procedure says how {instrument.name} ({name}) is made safe",
                f"Write a procedure with “instrument: {name}” and a route that it stands.",
            )
