"""Where an instrument's procedure puts it away."""

from __future__ import annotations

from basinside.check.checked import Checked, Sound
from basinside.model.procedure import Step


def stored(checked: Checked, each: Sound) -> tuple[Step, ...]:
    """Return the steps that store, the procedure's own first, then those of its tasks."""
    own = []
    if "store" in each.whole.actions:
        own = [placed.step for placed in each.whole.steps if placed.action == "store"]
    steps = checked.with_tasks(each.whole) if not own else ()
    return (*own, *(placed.step for placed in steps if placed.action == "store"))
