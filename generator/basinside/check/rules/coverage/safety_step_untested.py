"""The rule safety-step-untested."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.policies import lines_for
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.WARN, of_all=True)
def check_safety_step_untested(checked: Checked) -> Iterator[Finding]:
    """Each safety step is asked about in an assessment, wherever knowledge is asked for.

    Why: a step is marked `safety: yes` because it has hurt people. Whoever is signed for should
    have been asked about it, and watched while doing it; that it stands in the observation
    checklist follows from the mark.
    A step counts as asked about when an item of the pool `assessment` is about it or rests on it.
    Only procedures for which the policy asks for an assessment are looked at. Which item it would
    be is not said here.
    Bad: a new safety step, and no item about it in the pool of the assessment.
    Good: `about: [bulb-soak/start-timing]` at an item of that pool.
    Source: CDC and HICPAC, core practices, 2016 (competency in every step, from memory).
    """
    handbook = checked.content.handbook
    if handbook is None:
        return
    asked = checked.content.asked_about("assessment")
    for name, whole in checked.derived.procedures.items():
        if not any(line.knowledge for line in lines_for(handbook, (name,))):
            continue
        for placed in whole.steps:
            step = placed.step
            if step.safety and f"{name}/{step.step}" not in asked:
                yield Finding(
                    step.place,
                    f"no assessment item is about the safety step {step.step} of {name}",
                    "Write one, or name the step under “about:” of one that asks it.",
                    (whole.procedure.place,),
                )
