"""The rule ppe-for-hazard."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.chemicals import HURTS
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.model.derived import LEVEL_STAGES, PlacedStep, WholeProcedure
from basinside.model.words import Action, Hazard, Worn
from basinside.problem import Level, Place

SPLASHES: Final[frozenset[Action]] = frozenset({"clean", "rinse", "soak", "wipe"})
COOL: Final[frozenset[Action]] = frozenset(
    {"inspect", "test", "measure strength", "label", "record", "report", "put on", "take off"}
)
"""Actions that touch nothing hot, whatever danger is named beside them."""
UNDER_PRESSURE: Final[frozenset[Action]] = frozenset({"hold", "expose", "cool", "unload"})
"""Actions at a vessel that works; it is filled, closed and looked at while it is cold."""
EYES: Final[frozenset[Worn]] = frozenset({"eye protection", "face shield"})
GLOVES: Final[frozenset[Worn]] = frozenset({"heavy gloves", "thin gloves"})
_GLOVED: Final[frozenset[Worn]] = GLOVES | {"waterproof heat gloves"}
HANDLES_WASHED: Final[frozenset[Action]] = frozenset(
    {"inspect", "count", "take apart", "assemble", "lubricate", "test", "pack"}
)
"""What is done by hand with parts."""
BURNS: Final[frozenset[Hazard]] = frozenset({"corrosive", "toxic"})


@rule(level=Level.STOP)
def check_ppe_for_hazard(checked: Checked) -> Iterator[Finding]:
    """Each step says to wear what its hazard asks for, and so does each card of a chemical.

    Why: washing splashes blood, baths burn eyes and skin, steam goes through cloth gloves. At the
    stage of cleaning hands are in heavy gloves, eyes covered, and there is an apron; something
    soiled is touched with gloves on, and so is what was only washed; heat asks for waterproof heat
    gloves. Where a bath that hurts is rinsed off, or a step names a corrosive danger, gloves, eyes
    and apron. What a chemical's card lists counts at each step that uses it.
    Bad: `action: clean` with `wear: [thin gloves]`.
    Good: `wear: [heavy gloves, eye protection, apron]`.
    Source: Tewolde and others, 2018, health centres in Mekelle (protection skipped); common
    practice.
    """
    for agent in checked.content.agents.values():
        if HURTS.isdisjoint(agent.hazards):
            continue
        worn = frozenset(agent.wear)
        missing = _missing(worn, heavy=not BURNS.isdisjoint(agent.hazards), apron=True)
        if missing:
            yield _finding(agent.place, f"the card of {agent.name}", missing, (agent.place,))
    for whole in checked.derived.procedures.values():
        for placed in whole.steps:
            missing = _of_step(whole, placed)
            if missing:
                step = placed.step
                also = (whole.procedure.place,)
                name = f"{whole.procedure.procedure}/{step.step}"
                yield _finding(step.place, name, missing, also)


def _finding(place: Place, name: str, missing: list[str], also: tuple[Place, ...]) -> Finding:
    return Finding(
        place,
        f"{name} does not ask for {listed(missing)}",
        "Write it under “wear:”.",
        also,
    )


def _missing(worn: Collection[Worn], *, heavy: bool, apron: bool) -> list[str]:
    """Return what a splash asks for and is not worn."""
    gloves = "heavy gloves" in worn if heavy else not GLOVES.isdisjoint(worn)
    found = [] if gloves else ["heavy gloves" if heavy else "gloves"]
    if EYES.isdisjoint(worn):
        found.append("eye protection")
    if apron and "apron" not in worn:
        found.append("an apron")
    return found


def _is_hot(placed: PlacedStep) -> bool:
    kind = placed.danger.kind if placed.danger else None
    if kind == "hot":
        return placed.action not in COOL
    return kind == "steam under pressure" and placed.action in UNDER_PRESSURE


def _of_step(whole: WholeProcedure, placed: PlacedStep) -> list[str]:
    worn = placed.wear
    if placed.danger is not None and _is_hot(placed):
        return [] if "waterproof heat gloves" in worn else ["waterproof heat gloves"]
    if _splashes_chemical(whole, placed):
        return _missing(worn, heavy=False, apron=True)
    soiled = placed.before == "soiled" or (whole.route is None and placed.action == "clean")
    if placed.action in SPLASHES and placed.stage.stage == "cleaning":
        return _missing(worn, heavy=True, apron=True)
    touches = placed.action in {"wet", "wipe", "take apart", "clean", "soak", "transport"}
    if soiled and touches and GLOVES.isdisjoint(worn):
        return ["gloves"]
    return ["gloves"] if _washed_only(whole, placed) and _GLOVED.isdisjoint(worn) else []


def _splashes_chemical(whole: WholeProcedure, placed: PlacedStep) -> bool:
    """Return whether a step names the danger itself, or rinses a bath that hurts off the parts."""
    if placed.danger is not None and placed.danger.kind == "corrosive":
        return True
    if placed.action != "rinse" or placed.before != "processed":
        return False
    given = [each for each in whole.steps[: placed.number - 1] if each.is_level_step]
    agent = given[-1].agent if given else None
    if agent is None or HURTS.isdisjoint(agent.hazards):
        return False
    between = whole.steps[given[-1].number : placed.number - 1]
    return all(each.action != "rinse" for each in between)


def _washed_only(whole: WholeProcedure, placed: PlacedStep) -> bool:
    """Return whether hands are on parts that were washed and do not have their level yet."""
    if placed.before != "clean" or placed.action not in HANDLES_WASHED:
        return False
    return placed.stage.stage not in LEVEL_STAGES and bool(whole.level_steps)
