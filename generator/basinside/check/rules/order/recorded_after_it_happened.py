"""The rule recorded-after-it-happened."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.task_steps import at_its_step
from basinside.model.derived import PlacedStep, WholeProcedure
from basinside.model.words import Writes
from basinside.problem import Level


@rule(level=Level.STOP)
def check_recorded_after_it_happened(checked: Checked) -> Iterator[Finding]:
    """Nothing is written down before it happened.

    Why: a log that is filled in beforehand says that all went well on the day it did not, and the
    recall begins from it.
    Whatever `writes` a result stands after the last `action: test` of its procedure, what writes
    the time out after the level step and after `unload`, what writes an indicator after the step
    that reads it (`makes_sure: [indicator read]`), and what writes a strength after
    `action: measure strength`, where there are such steps.
    Bad: write time out and result in the log, then lift out and test.
    Good: lift out, test, then write.
    Source: common practice.
    """
    for whole in checked.derived.procedures.values():
        happened = _happened(whole)
        for placed in whole.steps:
            for word in placed.writes:
                late = happened.get(word)
                if late is not None and late.number > placed.number:
                    yield at_its_step(
                        whole,
                        placed,
                        f"{whole.procedure.procedure} writes the {word} in {placed.step.step},"
                        f" before it is known in {late.step.step}",
                        "Put it after that step.",
                        "writes",
                    )


def _happened(whole: WholeProcedure) -> dict[Writes, PlacedStep]:
    """Return for each word the last step by which it is known."""
    found: dict[Writes, PlacedStep] = {}
    level = 0
    for placed in whole.steps:
        if placed.is_level_step:
            level = placed.number
            found["time out"] = placed
        elif level and placed.action == "unload":
            found["time out"] = placed
        if placed.action == "test" and whole.instrument is not None:
            found["result"] = placed
        if placed.action == "measure strength":
            found["strength"] = placed
        if "indicator read" in placed.makes_sure:
            found.setdefault("indicator", placed)
    return found
