"""The rule clean-before-level."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked, Sound
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.STOP)
def check_clean_before_level(checked: Checked) -> Iterator[Finding]:
    """What is disinfected or sterilized was cleaned and rinsed before.

    Why: soil shields germs from heat and uses up chemicals. Parts count as clean when a step with
    `action: clean` and a later one with `action: rinse` stand before the step that gives the
    level, which is the `expose` of a disinfection or sterilization stage.
    Bad: take apart, then expose.
    Good: take apart, clean, rinse, then expose.
    Source: WHO and CDC, as in MSF, Management of a cholera epidemic, 2018, appendix 15 (detergent
    before chlorine, which soil makes inactive).
    """
    for each in checked.sound:
        if not each.level_steps:
            if each.level != "clean and dry":
                yield _no_level_step(each)
            continue
        first = each.level_steps[0]
        if first.before == "soiled":
            earlier = [placed.action for placed in each.whole.steps if placed.number < first.number]
            if "clean" in earlier:
                missing = "was cleaned but not rinsed after it"
                mend = "Put a step with “action: rinse” between the two."
            else:
                missing = "has not been cleaned"
                mend = "Put a step with “action: clean” and one with “action: rinse” before it."
            yield Finding(
                first.step.place,
                f"{each.name} exposes in {first.step.step} what {missing}",
                mend,
                (each.whole.procedure.place,),
            )


def _no_level_step(each: Sound) -> Finding:
    return Finding(
        each.whole.procedure.place.at("stages"),
        f"{each.name} has no step that gives {each.level}",
        "Write “action: expose” in its disinfection or sterilization stage.",
        (each.whole.procedure.place,),
    )
