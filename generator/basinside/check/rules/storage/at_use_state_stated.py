"""The rule at-use-state-stated."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.model.words import at_least
from basinside.problem import Level


@rule(level=Level.WARN)
def check_at_use_state_stated(checked: Checked) -> Iterator[Finding]:
    """Each part that touches a patient says in which state it is used.

    Why: a blade that was made sterile and lay open is no longer sterile when it is used. `at_use`
    says what counts at the bedside; it is not less than the part's contact asks for.
    Bad: a mask with `touches: [mucous membrane]` and no `at_use`.
    Good: `at_use: {mask: high-level disinfection}`.
    Source: Spaulding's classes as CDC 2008 and WHO print them; common practice for the state at
    use.
    """
    for name in dict.fromkeys(each.instrument.instrument for each in checked.sound):
        instrument = checked.content.instruments[name]
        for n, part in enumerate(instrument.parts):
            state = instrument.at_use.get(part.part)
            if state is None:
                if any(touch != "never the patient" for touch in part.touches):
                    yield Finding(
                        part.place,
                        f"{name} does not say in which state its {part.shown_name} is used",
                        f"Write “{part.part}: ...” under “at_use:”.",
                        (instrument.place,),
                    )
                continue
            needed = checked.needed(instrument, part).level
            if not at_least(state, needed):
                yield Finding(
                    instrument.place.at("at_use", part.part),
                    f"{name} uses its {part.shown_name} in the state {state}, and its contact"
                    f" asks for {needed}",
                    also=(part.place, instrument.place),
                )
