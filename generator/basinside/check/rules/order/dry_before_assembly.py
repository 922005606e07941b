"""The rule dry-before-assembly."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.course import at_step, wet_at
from basinside.check.rule import Finding, rule
from basinside.model.words import Action
from basinside.problem import Level

SHUTS_IN: Final[frozenset[Action]] = frozenset({"assemble", "lubricate"})


@rule(level=Level.STOP)
def check_dry_before_assembly(checked: Checked) -> Iterator[Finding]:
    """Parts are dry when they are put together or lubricated.

    Why: a drop between two parts does not dry any more; germs grow in it, threads rust, a wet
    lamp socket puts out the light, and water runs into a pump. A film of lubricant holds on
    nothing wet.
    What counts is a step with `action: dry` after the last step that wets the parts, which boiling
    and a bath do too. Parts that are still soiled are told by soiled-clean-processed.
    Bad: rinse, put together, dry.
    Good: rinse, dry each part, put together.
    Source: the laparoscopy infections reported in Journal of Hospital Infection, 2006 (dry and
    dismantled); common practice.
    """
    for each in checked.sound:
        for placed in each.whole.steps:
            if placed.action in SHUTS_IN and placed.before != "soiled":
                if wet_at(each, placed):
                    done = "puts together" if placed.action == "assemble" else "lubricates"
                    yield at_step(
                        each,
                        placed,
                        f"{each.name} {done} in {placed.step.step} what is still wet",
                        "Put a step with “action: dry” before it.",
                    )
                break
