"""The rule test-before-use-complete."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.check.task_steps import at_its_stages, first_of
from basinside.model.derived import PlacedStep, WholeProcedure
from basinside.problem import Level


@rule(level=Level.STOP)
def check_test_before_use_complete(checked: Checked) -> Iterator[Finding]:
    """A test before use begins with clean hands, looks, tests, and marks what failed.

    Why: what is ready for a patient is touched again, so hands come first. A failed one that goes
    back to the shelf without a mark is the one the next person takes.
    Asked of a procedure that has an instrument and no route: `wash hands` before the first step
    that touches it, `inspect` before `test`, `test`, a `label` after it for what failed, and a
    `release` or `record` at the end.
    Bad: squeeze it, use it.
    Good: wash hands, look, test, “Failed twice? OUT OF USE.” with `action: label`, release.
    Source: Anesthesia and Analgesia 100:590, 2005 (a failed test before use decides); common
    practice for hands and mark.
    """
    for whole in checked.derived.procedures.values():
        if whole.instrument is not None and whole.procedure.route is None:
            missing = list(_missing(whole))
            if missing:
                yield at_its_stages(
                    whole,
                    f"{whole.procedure.procedure} tests before use without {listed(missing)}",
                    "Put a step for it where it belongs.",
                )


def _missing(whole: WholeProcedure) -> Iterator[str]:
    touch = first_of(whole.steps, "assemble", "test", "lubricate", "take apart")
    if not _comes_before(whole, "wash hands", touch):
        yield "washing hands first"
    test = first_of(whole.steps, "test")
    if not _comes_before(whole, "inspect", test or touch):
        yield "looking at it first"
    if test is None:
        yield "a test"
    last = test.number if test is not None else 0
    if first_of(whole.steps[last:], "label") is None:
        yield "a mark for what failed"
    if first_of(whole.steps[last:], "release", "record") is None:
        yield "a release at its end"


def _comes_before(whole: WholeProcedure, action: str, placed: PlacedStep | None) -> bool:
    last = placed.number - 1 if placed is not None else len(whole.steps)
    return any(each.action == action for each in whole.steps[:last])
