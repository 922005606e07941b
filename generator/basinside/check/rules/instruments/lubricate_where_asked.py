"""The rule lubricate-where-asked."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked, Sound
from basinside.check.course import at_procedure, at_step
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.model.derived import PlacedStep
from basinside.model.instrument import Part
from basinside.problem import Level


@rule(level=Level.STOP)
def check_lubricate_where_asked(checked: Checked) -> Iterator[Finding]:
    """A part whose instructions ask for a lubricant gets it after each cleaning.

    Why: detergent takes the film off. A dry seal leaks and tears, a dry hinge sticks, grinds and
    rusts.
    Asked for is what stands as `lubricate` at a part. What counts is a step with
    `action: lubricate` after the cleaning; without `parts:` it is for all that ask. It comes before
    the parts are put together, and before the test.
    Bad: a seal with `lubricate`, in a procedure that puts it together dry.
    Good: dry, lubricate, assemble, test.
    Source: the maker's instructions; common practice.
    """
    for each in checked.sound:
        asks = [part for part in each.whole.parts if part.lubricate]
        if asks:
            done = [
                placed
                for placed in each.whole.steps
                if placed.action == "lubricate" and placed.before != "soiled"
            ]
            dry = [part for part in asks if not any(_covers(placed, part) for placed in done)]
            if dry:
                yield _dry(each, dry)
            elif (late := _too_late(each, done[-1])) is not None:
                yield at_step(
                    each,
                    done[-1],
                    f"{each.name} lubricates in {done[-1].step.step} what was put together or"
                    f" tested in {late.step.step}",
                    "Lubricate first.",
                )


def _too_late(each: Sound, done: PlacedStep) -> PlacedStep | None:
    """Return what was put together or tested before it, and is not again after it."""
    again = {placed.action for placed in each.whole.steps[done.number :]}
    for placed in each.whole.steps[: done.number]:
        if placed.action in {"assemble", "test"} - again and placed.before != "soiled":
            return placed
    return None


def _covers(placed: PlacedStep, part: Part) -> bool:
    return not placed.step.parts or part.part in placed.step.parts


def _dry(each: Sound, dry: list[Part]) -> Finding:
    return at_procedure(
        each,
        f"{each.name} does not lubricate {listed(part.shown_name for part in dry)}, which"
        f" {'asks' if len(dry) == 1 else 'ask'} for it",
        "Put a step with “action: lubricate” after the parts are dry.",
    )
