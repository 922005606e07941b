"""The rule parts-counted."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked, Sound
from basinside.check.course import (
    at_procedure,
    at_step,
    cleaned_at,
    pack_before_level,
    pack_for_level,
)
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.model.derived import PlacedStep
from basinside.problem import Level


@rule(level=Level.STOP)
def check_parts_counted(checked: Checked) -> Iterator[Finding]:
    """Parts are counted in and out, and into the pack where they are packed, every one of them.

    Why: a valve that stays in the basin is missed when the next patient needs it, and a needle
    that stays in the set finds a hand. What is counted in can be looked for while the water is
    still there.
    A count is a step with `action: count`: one while the parts are soiled and after they were taken
    apart, one after the level and before they are put together.
    Where a pack goes into the vessel, the second is between cleaning and packing, or the step
    that packs names each part in `parts:`. A count without `parts:` is of all of them. An
    instrument of one piece needs none.
    Bad: take apart, clean, rinse, expose, dry, assemble.
    Good: take apart, count, clean, rinse, expose, dry, count, assemble.
    Source: common practice.
    """
    for each in checked.sound:
        if sum(part.count for part in each.whole.parts) > 1:
            yield from _uncounted(each)
            yield from _left_out(each)
            yield from _hidden(each)


def _uncounted(each: Sound) -> Iterator[Finding]:
    counts = [placed.number for placed in each.whole.steps if placed.action == "count"]
    cleaned, pack = cleaned_at(each), pack_for_level(each)
    counted_in = any(number < cleaned for number in counts)
    again = pack_before_level(each) is not None  # in a bath: told by soiled-clean-processed
    if pack is not None:
        again = bool(pack.step.parts) or any(cleaned < number < pack.number for number in counts)
        if not again:
            yield at_step(
                each,
                pack,
                f"{each.name} packs in {pack.step.step} what was not counted into the pack",
                "Name each part in its “parts:”, or count in a step before it.",
            )
    elif not again:
        given = each.level_steps
        again = any(number > (given[-1].number if given else cleaned) for number in counts)
        if not again and counted_in:
            yield at_procedure(
                each,
                f"{each.name} counts the parts in, and not out again",
                "Put a step with “action: count” after the level, before they are put together.",
            )
    if not counted_in and cleaned:
        yield at_procedure(
            each,
            f"{each.name} does not count the parts {'in' if again or pack else 'at all'}",
            "Put a step with “action: count” before the parts are cleaned.",
        )


def _hidden(each: Sound) -> Iterator[Finding]:
    """Yield findings where the whole is counted, and not its parts."""
    steps = each.whole.steps
    apart = next((one.number for one in steps if one.action == "take apart"), 0)
    together = [one.number for one in steps if one.action == "assemble"]
    counts = [placed for placed in steps if placed.action == "count"]
    if counts and counts[0].number < apart and counts[0].before == "soiled":
        yield _whole(each, counts[0], "before they are taken apart", "Take it apart first.")
    packed = pack_before_level(each) is not None
    if together and not packed and len(counts) > 1 and counts[-1].number > together[-1]:
        yield _whole(each, counts[-1], "after they were put together", "Count first.")


def _whole(each: Sound, placed: PlacedStep, when: str, mend: str) -> Finding:
    return at_step(each, placed, f"{each.name} counts the parts in {placed.step.step} {when}", mend)


def _left_out(each: Sound) -> Iterator[Finding]:
    for placed in each.whole.steps:
        step = placed.step
        if placed.action in {"count", "pack"} and step.parts:
            left = [part.shown_name for part in each.whole.parts if part.part not in step.parts]
            if left:
                yield _partly(each, placed, left)


def _partly(each: Sound, placed: PlacedStep, left: list[str]) -> Finding:
    done = "counts" if placed.action == "count" else "counts into the pack"
    return at_step(
        each,
        placed,
        f"{each.name} {done} in {placed.step.step} without {listed(left)}",
        "Name each part, or none for all of them.",
        "parts",
    )
