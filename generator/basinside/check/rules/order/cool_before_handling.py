"""The rule cool-before-handling."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked, Sound
from basinside.check.course import at_step
from basinside.check.rule import Finding, rule
from basinside.model.derived import PlacedStep
from basinside.model.words import Action
from basinside.problem import Level

HOT_KINDS: Final = frozenset({"boiling", "steam", "dry heat"})
TOUCHES: Final[frozenset[Action]] = frozenset(
    {
        "unload",
        "dry",
        "inspect",
        "count",
        "assemble",
        "lubricate",
        "test",
        "take apart",
        "wipe",
        "handle",
        "pack",
        "store",
        "transport",
    }
)


@rule(level=Level.STOP)
def check_cool_before_handling(checked: Checked) -> Iterator[Finding]:
    """What comes out of boiling water, steam or an oven cools before hands take it.

    Why: hot parts burn, hot silicone tears, and a hot pack that is gripped draws damp and germs in
    through the wrap.
    Cooling is a step with `action: cool`, or one with `makes_sure: [cool enough to touch]`, or an
    unloading that holds for a time (after boiling, drying too, when hands are off it: no gloves
    are named). A step that only waits until a
    vessel has lost its pressure (`makes_sure: [no pressure left]`) cools the vessel, not the
    parts. A task that the procedure leads to (`see`) may hold these steps. Hands may go first in
    waterproof heat gloves, or unload with a tool named in `with`.
    Bad: boil, lift out, put together.
    Good: boil, lift out with forceps, let it cool in the covered tray, put together.
    Source: common practice.
    """
    for each in checked.sound:
        if each.route.kind in HOT_KINDS:
            yield from _too_hot(checked, each)


def _too_hot(checked: Checked, each: Sound) -> Iterator[Finding]:
    steps = checked.with_tasks(each.whole)
    given = [n for n, placed in enumerate(steps) if placed.is_level_step]
    for placed in steps[given[-1] + 1 :] if given else ():
        if _cools(each, placed):
            return
        step = placed.step
        lifted = placed.action == "unload" and placed.with_
        if placed.action in TOUCHES and "waterproof heat gloves" not in step.wear and not lifted:
            yield at_step(
                each,
                placed,
                f"{each.name} puts hands to hot parts in {step.step}, which comes before they"
                " have cooled",
                "Put a step with “action: cool” before it, or name heat gloves in “wear:”.",
            )
            return


def _cools(each: Sound, placed: PlacedStep) -> bool:
    step = placed.step
    if "cool enough to touch" in placed.makes_sure:
        return True
    if placed.action == "cool":
        return "no pressure left" not in placed.makes_sure
    hands_off = placed.action == "dry" and not any(worn.endswith("gloves") for worn in step.wear)
    slow = placed.action == "unload" or (each.route.kind == "boiling" and hands_off)
    return placed.hold is not None and slow
