"""The rule label-until-when."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.course import after_level, at_procedure, at_step, pack_before_level
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.check.task_steps import first_of
from basinside.model.words import at_least
from basinside.problem import Level


@rule(level=Level.STOP)
def check_label_until_when(checked: Checked) -> Iterator[Finding]:
    """What is kept in a tray has a label that says what it is and since or until when it is good.

    Why: a closed tray shows nothing of its age, and two that look alike get mixed. Without a date
    nobody knows when it must be done again.
    From high-level disinfection upwards a step with `action: label` after the level writes the
    item (or unit mark), and the date or the use-by date, before the tray is put away. Packs are
    asked by pack-traceable.
    Bad: put together, test, store.
    Good: put together, test, `action: label` with `writes: [unit mark, date, use-by date]`, store.
    Source: common practice.
    """
    for each in checked.sound:
        if not each.level_steps or not at_least(each.level, "high-level disinfection"):
            continue
        if pack_before_level(each) is not None:
            continue
        later = after_level(each)
        store = first_of(later, "store")
        labels = [placed for placed in later if placed.action == "label"]
        written = {word for placed in labels for word in placed.writes}
        missing = [] if written & {"item", "unit mark"} else ["what it is"]
        if not written & {"date", "use-by date"}:
            missing.append("how old it is")
        if missing:
            yield at_procedure(
                each,
                f"no label on what {each.name} stores says {listed(missing)}",
                "Put a step with “action: label” and “writes: [item, date, use-by date]” before it"
                " is stored.",
            )
        elif store is not None and labels[0].number > store.number:
            yield at_step(
                each,
                labels[0],
                f"{each.name} labels in {labels[0].step.step} what was put away in"
                f" {store.step.step}",
                "Label it first.",
            )
