"""The rule single-patient-shared."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.NEVER)
def check_single_patient_shared(checked: Checked) -> Iterator[Finding]:
    """What is made for one patient has no way back to the shelf for the next one.

    Why: it may be washed and used again by the same patient, but its maker never showed that it
    can be made safe for another. Shared is what a route brings back to a level, and what is kept
    ready in `ready_reserve`. A procedure without a route, which washes it for the same patient,
    is allowed.
    Bad: a procedure with a route for an instrument with `label: single patient`.
    Good: no such procedure; what to do with one on the shelf as `found_on_the_shelf`.
    Source: White and others, Global Health Science and Practice 2025;13(1):e2300398 (parts for
    single use were damaged by steam); common practice.
    """
    for whole in checked.derived.procedures.values():
        instrument = whole.instrument
        if instrument and instrument.label == "single patient" and whole.procedure.route:
            yield Finding(
                whole.procedure.place.at("instrument"),
                f"{whole.procedure.procedure} brings {instrument.instrument} back for the next"
                " patient, which is made for a single one",
                "Delete the procedure, and write at the item what to do with one that is found.",
            )
    handbook = checked.content.handbook
    for name in handbook.clinic.ready_reserve if handbook else ():
        kept = checked.content.instruments.get(name)
        if handbook and kept and kept.label == "single patient":
            yield Finding(
                handbook.clinic.place.at("ready_reserve", name),
                f"{name} is made for a single patient and is kept ready for whoever comes next",
                "Keep new ones as supplies instead.",
            )
