"""The rule brushes-and-basins-processed."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.model.derived import LEVEL_STAGES
from basinside.model.words import Action
from basinside.problem import Level

_WASHES: Final[frozenset[Action]] = frozenset({"soak", "clean"})
"""What is done to soiled parts in a basin or with a brush."""
_CLEANS: Final[frozenset[Action]] = frozenset({"soak", "clean", "wipe", "load", "expose"})
"""What a task does to tools and basins."""


@rule(level=Level.WARN, of_all=True)
def check_brushes_and_basins_processed(checked: Checked) -> Iterator[Finding]:
    """What instruments are washed in and with is made clean itself.

    Why: a brush that is never boiled carries germs from one instrument to the next, and a basin
    keeps a film. Each tool and basin that a cleaning step is done `in` or `with` is washed, wiped
    or boiled by a task, which is a procedure without an instrument; or goes into a level step.
    Bad: `with: [soft-brush]` in washing, and no task that names it.
    Good: a task with `action: clean` and `action: expose`, `with: [soft-brush]`.
    Source: HSE, ultrasonic baths (emptied and dried overnight); common practice for brushes.
    """
    processed = _processed(checked)
    said: set[str] = set()
    for each in checked.sound:
        for placed in each.whole.steps:
            step = placed.step
            if placed.stage.stage != "cleaning" or placed.action not in _WASHES:
                continue
            for name in (*([placed.in_] if placed.in_ else ()), *placed.with_):
                tool = checked.content.equipment.get(name)
                if tool is None or name in processed or name in said:
                    continue
                said.add(name)
                yield Finding(
                    step.place,
                    f"{each.name} washes with {tool.name} ({name}) in {step.step}, and no task"
                    " says how that is made clean",
                    "Name it in a step of a task that washes, wipes or boils it.",
                    (tool.place, each.whole.procedure.place),
                )


def _processed(checked: Checked) -> set[str]:
    """Return the equipment that a task makes clean, or that is in a step that gives a level."""
    found: set[str] = set()
    for whole in checked.derived.procedures.values():
        task = whole.procedure.instrument is None
        for placed in whole.steps:
            step = placed.step
            level = placed.stage.stage in LEVEL_STAGES and placed.action in {"load", "expose"}
            if level or (task and placed.action in _CLEANS):
                found.update(placed.with_)
                if task:
                    found.update((*step.needs, *([placed.in_] if placed.in_ else ())))
    return found
