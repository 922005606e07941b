"""The rule hand-hygiene-and-ppe-off."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.model.derived import PlacedStep, WholeProcedure
from basinside.model.words import Action
from basinside.problem import Level

HANDS: Final[frozenset[Action]] = frozenset({"wash hands", "take off"})
CLEAN_WORK: Final[frozenset[Action]] = frozenset({"assemble", "pack", "test", "lubricate"})
TOUCHES: Final[frozenset[Action]] = CLEAN_WORK | {"rinse", "dry", "unload", "count", "inspect"}
"""What is done with bare processed parts; after heat they are lifted out, which counts too."""


@rule(level=Level.STOP)
def check_hand_hygiene_and_ppe_off(checked: Checked) -> Iterator[Finding]:
    """Between dirty work and clean work gloves come off or hands are washed.

    Why: the gloves that held the brush carry everything that was brushed off. Asked between the
    last step with `action: clean` and the first that puts together, tests, oils or packs, or that
    touches what has its level. After the bath itself hands in its gloves may lift nothing out.
    A task that cleans without an instrument has such a step anywhere after it.
    Bad: clean, rinse, expose, dry, assemble.
    Good: clean, rinse, expose, `action: wash hands`, dry, assemble.
    Source: WHO, Hand hygiene posters, 2009 (after body fluids, before a clean task), from memory;
    PAHO, 2016, on clean hands on the clean side, from memory.
    """
    for whole in checked.derived.procedures.values():
        cleaned = [placed.number for placed in whole.steps if placed.action == "clean"]
        if not cleaned:
            continue
        later = whole.steps[cleaned[-1] :]
        first = _first_clean_work(whole, later)
        if first is None:
            if whole.route is None and not any(each.action in HANDS for each in later):
                dirty = whole.steps[cleaned[-1] - 1]
                yield _finding(whole, dirty, f"after the dirty work of {dirty.step.step}")
            continue
        between = [each for each in later if each.number < first.number]
        if not any(each.action in HANDS for each in between):
            dirty = whole.steps[cleaned[-1] - 1]
            yield _finding(
                whole,
                first,
                f"between {dirty.step.step} and {first.step.step}, which is clean work",
            )


def _first_clean_work(whole: WholeProcedure, later: tuple[PlacedStep, ...]) -> PlacedStep | None:
    if whole.route is None:
        return None
    for placed in later:
        action = placed.action
        if action in CLEAN_WORK or (placed.before == "processed" and action in TOUCHES):
            return placed
    return None


def _finding(whole: WholeProcedure, placed: PlacedStep, where: str) -> Finding:
    return Finding(
        placed.step.place,
        f"{whole.procedure.procedure} neither takes gloves off nor washes hands {where}",
        "Put a step with “action: wash hands” before it.",
        (whole.procedure.place,),
    )
