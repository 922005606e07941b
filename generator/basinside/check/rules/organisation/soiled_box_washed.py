"""The rule soiled-box-washed."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.task_steps import tasks
from basinside.problem import Level


@rule(level=Level.WARN)
def check_soiled_box_washed(checked: Checked) -> Iterator[Finding]:
    """What soiled things are carried in is washed itself.

    Why: blood dries in the corners of a box that is only emptied, and whoever carries it next has
    it on their gloves.
    Each container in which a step with `action: transport` carries soiled parts stands in the `in`,
    `with` or `needs` of a step with `action: clean` in a task, which is a procedure without an
    instrument.
    Bad: `in: soiled-box` on the way to the sink, and no task that washes the box.
    Good: a task with `action: clean` and `needs: [soiled-box]`.
    Source: common practice.
    """
    washed = {
        name
        for whole in tasks(checked)
        for placed in whole.steps
        if placed.action == "clean"
        for name in (placed.in_, *placed.with_, *placed.step.needs)
    }
    told: set[str] = set()
    for each in checked.sound:
        for placed in each.whole.steps:
            if placed.action != "transport":
                continue
            name = placed.in_
            if placed.before != "soiled" or name is None:
                continue
            box = checked.content.equipment.get(name)
            if box is not None and name not in washed and name not in told:
                told.add(name)
                yield Finding(
                    placed.step.place.at("in"),
                    f"{each.name} carries soiled things in {box.name} ({name}), and no task washes"
                    " it",
                    "Name it under “needs:” of the step of a task that washes it.",
                    (placed.step.place, box.place, each.whole.procedure.place),
                )
