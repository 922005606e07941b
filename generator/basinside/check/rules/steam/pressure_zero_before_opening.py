"""The rule pressure-zero-before-opening."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.lacking import lacks
from basinside.check.rule import Finding, rule
from basinside.check.steam_runs import SteamRun, made_sure
from basinside.model.words import Action
from basinside.problem import Level

_OPENS: Final[frozenset[Action]] = frozenset({"dry", "unload", "release", "store"})
"""What is done with a load once the lid is off."""


@rule(level=Level.STOP)
def check_pressure_zero_before_opening(checked: Checked) -> Iterator[Finding]:
    """A vessel is opened when its gauge shows zero, and not before.

    Why: a lid that is opened under pressure flies off, and the steam behind it scalds.
    After the time is over, the first step that dries or unloads, or one before it, waits for zero.
    Bad: expose, then unload.
    Good: expose, then `action: cool` with `do: Wait for zero, then open.` and
    `makes_sure: [no pressure left]`, then dry and unload.
    Source: common practice.
    """
    for run in checked.steam_runs:
        if not _waits(run):
            what = "the vessel is opened afterwards without a wait for zero"
            yield lacks(run, what, "no pressure left")


def _waits(run: SteamRun) -> bool:
    """Whether pressure is waited for up to the step that opens, or in a task."""
    if "no pressure left" in made_sure(run.tasks):
        return True
    for placed in run.whole.steps:
        if placed.number <= run.start.number:
            continue
        if "no pressure left" in placed.makes_sure:
            return True
        if placed.action in _OPENS:
            return False
    return False
