"""The rule protection-put-on-first."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.check.task_steps import at_its_step
from basinside.model.derived import WholeProcedure
from basinside.model.words import Worn
from basinside.problem import Level

PUT_ON: Final[frozenset[Worn]] = frozenset(
    {"heavy gloves", "eye protection", "face shield", "apron"}
)
"""What is put on for the work at the sink and at the vessel; shoes are worn all day."""


@rule(level=Level.STOP)
def check_protection_put_on_first(checked: Checked) -> Iterator[Finding]:
    """What protects is put on in a step of its own, before the work that it protects from.

    Why: whoever reads “wear” at the sink has wet hands already, and goes on without. At the point
    of use and on the way to the sink people wear what they wear at the patient. After that, the
    first step that asks for heavy gloves, eye protection, face shield or apron has
    `action: put on`, or one stands before it; so it is before the first step of a cleaning stage.
    A procedure without a route asks it of thin gloves too.
    Bad: take apart and clean in heavy gloves that nobody was told to put on; put on after them.
    Good: `action: put on` with `wear: [heavy gloves, eye protection, apron]`, then take apart.
    Source: CDC, Guideline for isolation precautions, 2007 (put on before contact), from memory;
    common practice.
    """
    for whole in checked.derived.procedures.values():
        yield from _too_late(whole)


def _too_late(whole: WholeProcedure) -> Iterator[Finding]:
    asked = PUT_ON | ({"thin gloves"} if whole.route is None else frozenset())
    for placed in whole.steps:
        step = placed.step
        if placed.action == "put on":
            return
        if placed.stage.stage == "point of use" or placed.action == "transport":
            continue
        worn = [each for each in placed.wear if each in asked]
        if worn or placed.stage.stage == "cleaning":
            what = f"asks for {listed(worn)}" if worn else "cleans"
            name = whole.procedure.procedure
            yield at_its_step(
                whole,
                placed,
                f"{name} {what} in {step.step}, and no step before it puts anything on",
                "Put a step with “action: put on” before it.",
            )
            return
