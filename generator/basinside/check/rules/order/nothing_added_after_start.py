"""The rule nothing-added-after-start."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked, Sound
from basinside.check.course import after_level, at_step
from basinside.check.rule import Finding, rule
from basinside.model.words import Action
from basinside.problem import Level

OPEN_KINDS: Final = frozenset({"boiling", "chemical", "dry heat"})
"""Kinds of route into which something can be put while the time runs."""
DURING: Final[frozenset[Action]] = frozenset({"load", "expose", "hold"})


@rule(level=Level.STOP)
def check_nothing_added_after_start(checked: Checked) -> Iterator[Finding]:
    """Nothing goes into the pot, the bath or the oven once the time runs.

    Why: a late part gets less than its time, cold water stops the boiling, and a wet part thins
    the bath for all. Only a new start helps.
    A step that loads, exposes or holds has `makes_sure: [nothing added]`; no step with
    `action: load` comes after the time has started. A closed steam vessel cannot be added to.
    Bad: start the time, then load the last parts.
    Good: load all of it, start the time; “Add nothing.”
    Source: common practice.
    """
    for each in checked.sound:
        if each.route.kind in OPEN_KINDS and each.level_steps:
            yield from _added(each)


def _added(each: Sound) -> Iterator[Finding]:
    started = each.level_steps[-1]
    late = next((placed for placed in after_level(each) if placed.action == "load"), None)
    if late is not None:
        yield at_step(
            each,
            late,
            f"{each.name} loads in {late.step.step} after the time started in {started.step.step}",
            "Load everything before the time starts.",
        )
    elif not any(
        "nothing added" in placed.makes_sure
        for placed in each.whole.steps
        if placed.action in DURING
    ):
        yield at_step(
            each,
            started,
            f"{each.name} does not say in {started.step.step} that nothing is added once the"
            " time runs",
            "Say it in the step, and write “makes_sure: [nothing added]”.",
        )
