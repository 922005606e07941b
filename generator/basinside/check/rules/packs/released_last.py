"""The rule released-last."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.task_steps import at_its_step, first_of
from basinside.model.derived import PlacedStep, WholeProcedure
from basinside.model.words import Action
from basinside.problem import Level

OF_THE_RUN: Final[frozenset[Action]] = frozenset({"expose", "unload", "cool"})
TESTS: Final[tuple[Action, ...]] = ("inspect", "assemble", "test", "lubricate", "label")
USES: Final[frozenset[Action]] = frozenset({"store", "assemble", "test", "transport"})


@rule(level=Level.STOP)
def check_released_last(checked: Checked) -> Iterator[Finding]:
    """A load is released when it is out, dry and cool, and nothing of it is kept before that.

    Why: whoever signs for a load that is still in the vessel signs for what nobody has seen, and
    packs that lie in the cupboard already are used whatever the record says later.
    After the step with `action: release` nothing is exposed, cooled, unloaded or dried for a time;
    between the level step and the release nothing is stored, put together, tested or carried.
    Where an instrument is tested before use, it is released after the last look and test.
    Bad: expose, release, dry the packs, store; or expose, unload, store, release.
    Good: expose, dry, unload, look, release, store.
    Source: rules of US authorities for load records, as in load-record; common practice.
    """
    for whole in checked.derived.procedures.values():
        release = first_of(whole.steps, "release")
        levels = [placed for placed in whole.steps if placed.is_level_step]
        if release is not None and levels:
            yield from _around(whole, levels[0], release)
        elif release is not None and whole.instrument is not None:
            late = first_of(whole.steps[release.number :], *TESTS)
            if late is not None:
                yield _too_soon(whole, release, late)


def _around(whole: WholeProcedure, level: PlacedStep, release: PlacedStep) -> Iterator[Finding]:
    name = whole.procedure.procedure
    for placed in whole.steps:
        step = placed.step
        if placed.number > release.number and _of_the_run(placed):
            yield _too_soon(whole, release, placed)
            return
        if level.number < placed.number < release.number and placed.action in USES:
            yield at_its_step(
                whole,
                placed,
                f"{name} does {step.step} before {release.step.step} releases it",
                "Put the release before it.",
            )
            return


def _too_soon(whole: WholeProcedure, release: PlacedStep, late: PlacedStep) -> Finding:
    return at_its_step(
        whole,
        release,
        f"{whole.procedure.procedure} releases in {release.step.step} what goes on in"
        f" {late.step.step}",
        "Put the release after it.",
    )


def _of_the_run(placed: PlacedStep) -> bool:
    return placed.action in OF_THE_RUN or (placed.action == "dry" and placed.hold is not None)
