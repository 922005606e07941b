"""The rule dry-before-bath."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.course import at_step, wet_at
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.WARN)
def check_dry_before_bath(checked: Checked) -> Iterator[Finding]:
    """Parts are dry when they go into a chemical bath.

    Why: water on the parts makes the bath weaker with each load, and drops in a hollow part keep
    the bath out of it. Boiling needs no drying first, and a wipe is wet anyway.
    What counts is a step with `action: dry` after the last rinse of the cleaning.
    Bad: rinse, then expose.
    Good: rinse, dry, then expose.
    Source: common practice.
    """
    for each in checked.sound:
        if each.route.kind == "chemical" and each.level_steps:
            first = each.level_steps[0]
            if first.before != "soiled" and wet_at(each, first):
                yield at_step(
                    each,
                    first,
                    f"{each.name} puts wet parts into the bath in {first.step.step}, which makes"
                    " it weaker",
                    "Put a step with “action: dry” after the last rinse.",
                )
