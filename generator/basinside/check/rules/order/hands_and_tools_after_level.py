"""The rule hands-and-tools-after-level."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked, Sound
from basinside.check.course import after_level, at_step, bare_after_level, with_level
from basinside.check.rule import Finding, rule
from basinside.model.derived import PlacedStep
from basinside.model.words import Action, Worn
from basinside.problem import Level

TOUCHES: Final[frozenset[Action]] = frozenset(
    {"rinse", "unload", "dry", "wipe", "count", "take apart", "lubricate", "assemble", "test"}
)
"""What puts hands or tools to the parts themselves."""
HANDS: Final[frozenset[Action]] = frozenset({"wash hands", "take off"})
GLOVES: Final[frozenset[Worn]] = frozenset({"thin gloves", "waterproof heat gloves"})


@rule(level=Level.STOP)
def check_hands_and_tools_after_level(checked: Checked) -> Iterator[Finding]:
    """After the level only washed hands in clean gloves and processed tools touch the parts.

    Why: fingers, heavy gloves and forceps from the cupboard put back what the bath or the boiling
    took off; nobody does the level again.
    Between the last step with soiled parts or heavy gloves and the first touch after the level
    comes `action: wash hands`; gloves that only come off are not enough. Steps that hold a part
    after the level name gloves, or a tool in `with` that is `processed: yes` among the equipment;
    every tool in their `with` is. Parts that lie in a pack are safe in it, and low-level
    disinfection asks for clean hands only.
    Bad: expose, lift out with the wash-side forceps, assemble in heavy gloves.
    Good: expose, wash hands, lift out with boiled forceps, assemble in new thin gloves.
    Source: IARC, Reference manual for screening, 2005, appendix C (forceps that take items out
    are disinfected highly themselves).
    """
    for each in checked.sound:
        yield from _hands(each)
        if bare_after_level(each):
            yield from _tools(checked, each)
            yield from _gloves(each)


def _hands(each: Sound) -> Iterator[Finding]:
    """Yield a finding where the first touch after the level comes with dirty hands."""
    after = after_level(each)
    touch = next((placed for placed in after if _touches(placed)), None)
    if touch is None or not _hands_done(each, touch):
        return
    washed = True
    for placed in each.whole.steps[: touch.number - 1]:
        if placed.action == "wash hands":
            washed = True
        elif placed.before == "soiled" or "heavy gloves" in placed.step.wear:
            washed = False
    if not washed:
        yield at_step(
            each,
            touch,
            f"{each.name} touches in {touch.step.step} what {with_level(each)} with hands that"
            " were not washed after the soiled parts",
            "Put a step with “action: wash hands” before it.",
        )


def _hands_done(each: Sound, touch: PlacedStep) -> bool:
    """Return whether gloves came off or hands were washed at all since the cleaning.

    Where they never were, hand-hygiene-and-ppe-off says so.
    """
    done = True
    for placed in each.whole.steps[: touch.number - 1]:
        if placed.action == "clean":
            done = False
        elif placed.action in HANDS:
            done = True
    return done


def _touches(placed: PlacedStep) -> bool:
    """Return whether a step touches the parts, and not the place where they lay."""
    return placed.action in TOUCHES and "surface wiped between" not in placed.makes_sure


def _tools(checked: Checked, each: Sound) -> Iterator[Finding]:
    told: set[str] = set()
    for placed in after_level(each):
        if not _touches(placed):
            continue
        for name in placed.with_:
            tool = checked.content.equipment.get(name)
            if tool is not None and not tool.processed and name not in told:
                told.add(name)
                yield at_step(
                    each,
                    placed,
                    f"{each.name} touches in {placed.step.step} what {with_level(each)} with a tool"
                    f" that is not processed: {tool.name}",
                    "Name a processed tool, or write “processed: yes” at the equipment.",
                )


def _gloves(each: Sound) -> Iterator[Finding]:
    for placed in after_level(each):
        step = placed.step
        if _touches(placed) and not _covered(placed):
            yield at_step(
                each,
                placed,
                f"{each.name} holds in {step.step} what {with_level(each)} with bare hands",
                "Write “wear: [thin gloves]”, or name a processed tool in “with:”.",
            )
            return


def _covered(placed: PlacedStep) -> bool:
    """Return whether gloves or a tool of any kind lie between the hand and the part."""
    return not GLOVES.isdisjoint(placed.wear) or bool(placed.with_)
