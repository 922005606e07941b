"""The rule at-use-state-stated."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.model.instrument import Part
from basinside.problem import Level


@rule(level=Level.WARN)
def check_at_use_state_stated(checked: Checked) -> Iterator[Finding]:
    """Each part that touches a patient says in which state it is used.

    Why: a blade that was made sterile and lay open is no longer sterile when it is used. `at_use`
    says what counts at the bedside.
    Bad: a mask with `touches: [mucous membrane]` and no `at_use`.
    Good: `at_use: {mask: high-level disinfection}`.
    Source: Spaulding's classes as CDC 2008 and WHO print them; common practice for the state at
    use.
    """
    for name in dict.fromkeys(each.instrument.instrument for each in checked.sound):
        instrument = checked.content.instruments[name]
        for part in instrument.parts:
            if part.part not in instrument.at_use and _meets_patient(part):
                needed = checked.needed(instrument, part).level
                yield Finding(
                    part.place,
                    f"{name} does not say in which state its {part.shown_name} is used",
                    f"Write “{part.part}: {needed}” under “at_use:”, or what counts there.",
                    (instrument.place,),
                )


def _meets_patient(part: Part) -> bool:
    return any(touch != "never the patient" for touch in part.touches)
