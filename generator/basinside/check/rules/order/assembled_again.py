"""The rule assembled-again."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.task_steps import at_its_stages, at_its_step
from basinside.model.derived import LEVEL_STAGES, WholeProcedure
from basinside.problem import Level


@rule(level=Level.STOP)
def check_assembled_again(checked: Checked) -> Iterator[Finding]:
    """What comes apart is put together again, and it is the whole that is tested.

    Why: a valve that stays in the tray is missed when the bag is squeezed at a newborn, and a test
    of loose parts says nothing about the joints between them.
    Asked of an instrument that has something in `take_apart`. After `action: take apart` comes
    `action: assemble`, before `action: test` and before the end; a test before use puts it
    together first, or looks with `action: assemble` whether it is. A procedure of some parts only
    may leave it to another, but then it tests nothing.
    Bad: take apart, clean, rinse, expose, dry, test, store.
    Good: take apart, clean, rinse, expose, dry, count, assemble, test, store.
    Source: Anesthesia and Analgesia 100:590, 2005 (a test before use); common practice.
    """
    for whole in checked.derived.procedures.values():
        if whole.instrument is not None and whole.instrument.take_apart and len(whole.parts) > 1:
            yield from _loose(whole)


def _loose(whole: WholeProcedure) -> Iterator[Finding]:
    name = whole.procedure.procedure
    instrument = whole.instrument.name if whole.instrument else ""
    loose = whole.route is None
    for placed in whole.steps:
        action = placed.action
        if action == "take apart":
            loose = True
        elif action == "assemble":
            loose = False
        elif action == "test" and loose and placed.stage.stage not in LEVEL_STAGES:
            yield at_its_step(
                whole,
                placed,
                f"{name} tests in {placed.step.step} what is not put together",
                "Put a step with “action: assemble” before it.",
            )
            return
    if loose and whole.route is not None and not whole.procedure.parts:
        yield at_its_stages(
            whole,
            f"{name} takes {instrument} apart and does not put it together again",
            "Put a step with “action: assemble” after the level.",
        )
