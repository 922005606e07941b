"""The rule caution-for-hazard."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.chemicals import IN_THE_BATH
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.model.derived import LEVEL_STAGES, PlacedStep, WholeProcedure
from basinside.model.words import Action, DangerKind, RouteKind
from basinside.problem import Level

HOT_ROUTES: Final[frozenset[RouteKind]] = frozenset({"boiling", "steam", "dry heat"})
HOT_ACTIONS: Final[frozenset[Action]] = frozenset({"expose", "unload"})
BURNING: Final[tuple[DangerKind, ...]] = ("corrosive", "gas")
HOT: Final[tuple[DangerKind, ...]] = ("hot", "steam under pressure")
SHARP: Final[tuple[DangerKind, ...]] = ("sharp",)


@rule(level=Level.STOP)
def check_caution_for_hazard(checked: Checked) -> Iterator[Finding]:
    """A step in which something can hurt says so beside it.

    Why: who reads only the step on the wall reads the caution with it, or not at all. It is asked
    where hands come near a corrosive chemical (mix, load, expose, soak, wipe, clean), where
    something hot is started or lifted out, and where an instrument with a cutting edge is cleaned.
    One danger is written; for a corrosive chemical that of its gas will do.
    Bad: `action: mix` with a corrosive chemical and no `danger`.
    Good: `danger: {kind: corrosive, say: Water before chlorine. Nothing else goes in.}`
    Source: common practice; the hazard statements of the product's own label.
    """
    for whole in checked.derived.procedures.values():
        hot = whole.procedure.vessel is not None or (
            whole.route is not None and whole.route.kind in HOT_ROUTES
        )
        edges = [part.shown_name for part in whole.parts if "cutting edge" in part.kinds]
        for placed in whole.steps:
            kinds, why = _asked(placed, hot=hot, edges=edges)
            danger = placed.danger
            if kinds and (danger is None or danger.kind not in kinds):
                yield _finding(whole, placed, kinds, why)


def _asked(
    placed: PlacedStep, *, hot: bool, edges: list[str]
) -> tuple[tuple[DangerKind, ...], str]:
    """Return of which kinds a danger would do, and what hurts; nothing when none is asked."""
    agent = placed.agent
    if hot and placed.stage.stage in LEVEL_STAGES and placed.action in HOT_ACTIONS:
        return HOT, "it is hot"
    if agent and "corrosive" in agent.hazards and placed.action in IN_THE_BATH:
        return BURNING, f"{agent.name} burns"
    if edges and placed.action == "clean":
        return SHARP, f"{listed(edges)} can cut"
    return (), ""


def _finding(
    whole: WholeProcedure, placed: PlacedStep, kinds: tuple[DangerKind, ...], why: str
) -> Finding:
    step = placed.step
    said = f"warns of {placed.danger.kind} only" if placed.danger else "gives no warning"
    return Finding(
        step.place,
        f"{whole.procedure.procedure}/{step.step} {said}; {why}",
        f"Write “danger:” of kind {' or '.join(kinds)}, and what to do.",
        (whole.procedure.place,),
    )
