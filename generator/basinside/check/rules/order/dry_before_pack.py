"""The rule dry-before-pack."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.course import at_step, first_pack, pack_for_level, wet_at
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.STOP)
def check_dry_before_pack(checked: Checked) -> Iterator[Finding]:
    """Parts are dry when they are packed.

    Why: water in a pack becomes a wet pack, and germs pass through wet wrap. Steam cannot dry
    what went in wet, and metal rusts in it.
    What counts is a step with `action: dry` after the last step that wets the parts.
    Bad: rinse, look, pack.
    Good: rinse, dry, look, pack.
    Source: common practice.
    """
    for each in checked.sound:
        pack = first_pack(each)
        if pack is None or (pack.before != "processed" and pack is not pack_for_level(each)):
            continue  # packed too soon is told by soiled-clean-processed
        if pack.before != "soiled" and wet_at(each, pack):
            yield at_step(
                each,
                pack,
                f"{each.name} packs in {pack.step.step} what is still wet",
                "Put a step with “action: dry” before it.",
            )
