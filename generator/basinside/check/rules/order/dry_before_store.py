"""The rule dry-before-store."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.course import after_level, at_step, first_pack, wet_at
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.STOP)
def check_dry_before_store(checked: Checked) -> Iterator[Finding]:
    """Parts are dry when they are put away.

    Why: germs grow in water that is left in a closed tray or in a hollow part.
    What counts is a step with `action: dry` after the last step that wets the parts, which
    boiling and a bath do too. How packs dry in a vessel is asked by drying-phase-stated.
    Bad: lift out of the bath, rinse, store.
    Good: rinse in boiled water, dry in the covered tray, store.
    Source: IARC, Reference manual for screening, 2005, p.126 (air dry after the rinse); the
    laparoscopy infections reported in Journal of Hospital Infection, 2006 (dry and dismantle).
    """
    for each in checked.sound:
        if first_pack(each) is not None:
            continue  # what went wet into its pack is told there
        after = after_level(each) if each.level_steps else each.whole.steps
        store = next((placed for placed in after if placed.action == "store"), None)
        if store is not None and wet_at(each, store):
            yield at_step(
                each,
                store,
                f"{each.name} stores in {store.step.step} what is still wet",
                "Put a step with “action: dry” before it.",
            )
