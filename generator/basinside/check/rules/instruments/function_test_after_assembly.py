"""The rule function-test-after-assembly."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked, Sound
from basinside.check.course import at_procedure, at_step, cleaned_at
from basinside.check.rule import Finding, rule
from basinside.model.derived import LEVEL_STAGES, PlacedStep
from basinside.problem import Level


@rule(level=Level.STOP)
def check_function_test_after_assembly(checked: Checked) -> Iterator[Finding]:
    """What was put together is tested after it, and what has a function test is tested at all.

    Why: a valve put in the wrong way round looks right, and is found out at the patient. Reused
    airways lasted from 45 to 176 uses until they failed: no count foresees it, a test does.
    What counts is a step with `action: test` after the last `action: assemble` of the procedure.
    An instrument that does not come apart is tested anywhere after its cleaning. A procedure of
    some parts only leaves the test to the one that puts the whole together.
    Bad: test the valve, then put it together and store it.
    Good: put together, test, store.
    Source: Anesthesia and Analgesia 100:590, 2005 (failed pre-use test decides); common practice.
    """
    for each in checked.sound:
        last, tested_after, tested = _course(each)
        if last is not None:
            if not tested_after:
                yield at_step(
                    each,
                    last,
                    f"{each.name} puts together in {last.step.step} what is not tested after it",
                    "Put a step with “action: test” after it.",
                )
        elif each.instrument.function_test and not tested and not each.whole.procedure.parts:
            yield at_procedure(
                each,
                f"{each.name} never does the function test of {each.instrument.name}",
                "Put a step with “action: test” after the cleaning.",
            )


def _course(each: Sound) -> tuple[PlacedStep | None, bool, bool]:
    """Return the last step that assembles, whether a test follows it, and whether any is done."""
    last: PlacedStep | None = None
    cleaned = cleaned_at(each)
    tested_after = tested = False
    for placed in each.whole.steps:
        action = placed.action
        if action == "assemble":
            last, tested_after = placed, False
        elif (
            action == "test" and placed.number > cleaned and placed.stage.stage not in LEVEL_STAGES
        ):
            tested_after = tested = True
    return last, tested_after, tested
