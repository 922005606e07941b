"""The rule detergent-rinsed-before-level."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked, Sound
from basinside.check.rinses import rinses, stays_on, unrinsed
from basinside.check.rule import Finding, rule
from basinside.model.derived import LEVEL_STAGES, PlacedStep
from basinside.problem import Level


@rule(level=Level.STOP)
def check_detergent_rinsed_before_level(checked: Checked) -> Iterator[Finding]:
    """What cleans is rinsed off before what disinfects or sterilizes comes.

    Why: detergent uses up chlorine, bakes on in steam and inflames the next patient. Where eyes
    were inflamed after operations, hollow instruments had been flushed poorly, and enzyme or a
    wrong dose of detergent had been used.
    A rinse is a step with `action: rinse` and no chemical. Parts that were never rinsed at all
    are told by clean-before-level.
    Bad: clean, rinse, wipe with detergent, then expose.
    Good: clean, wipe with detergent, rinse, then expose.
    Source: Cutler Peck et al., Journal of Cataract and Refractive Surgery 36(7), 2010 (inflamed
    eyes); MSF, Management of a cholera epidemic, 2018, appendix 15.
    """
    for each in checked.sound:
        left = _left_at_level(each)
        if left is not None:
            yield unrinsed(each, left, f"before {each.level_steps[0].step.step}")


def _left_at_level(each: Sound) -> PlacedStep | None:
    """Return the step that put on what is still on the parts when the level is given."""
    left: PlacedStep | None = None
    for placed in each.whole.steps:
        if placed.is_level_step:
            return None if placed.before == "soiled" else left
        in_bath = placed.stage.stage in LEVEL_STAGES and placed.step.agent == each.route.agent
        if rinses(placed):
            left = None
        elif stays_on(placed) and not in_bath:
            left = placed
    return None
