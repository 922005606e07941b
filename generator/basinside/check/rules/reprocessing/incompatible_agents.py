"""The rule incompatible-agents."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final, NamedTuple

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.model.derived import PlacedStep, WholeProcedure
from basinside.model.equipment import Agent
from basinside.model.words import Action, Family
from basinside.problem import Level

NEVER_TOGETHER: Final[frozenset[frozenset[Family]]] = frozenset(
    # Toxic gas with acids and ammonia: Safe Work Australia, HCIS, sodium hypochlorite solution,
    # EUH031. Gas with peracetic acid, and aldehydes used up by chlorine: common practice.
    frozenset({"chlorine", other})
    for other in ("acid", "ammonia", "peracetic", "aldehyde")
)
ONLY_IN_CONTAINER: Final[frozenset[Action]] = frozenset({"mix", "measure strength", "discard"})
"""Actions with a chemical that the parts are not in."""
EMPTIES: Final[frozenset[Action]] = frozenset({"discard", "rinse"})


class _Met(NamedTuple):
    agent: Agent
    step: str


@rule(level=Level.NEVER)
def check_incompatible_agents(checked: Checked) -> Iterator[Finding]:
    """Chemicals that must never meet do not meet: not on the parts, not in one basin.

    Why: chlorine with acid, ammonia or peracetic acid gives gas that burns the lungs; other pairs
    use each other up, and nothing is disinfected. Which families a chemical must never meet is
    written at it as `never_with`; the gravest pairs are known here.
    On the parts a rinse parts them. A basin is free again after a step with `action: discard` or
    `action: rinse` and the basin as `in`.
    Bad: soak in an acid cleaner, then expose in chlorine.
    Good: soak in an acid cleaner, rinse, expose in chlorine in another basin.
    Source: Safe Work Australia, HCIS, sodium hypochlorite solution (EUH031); others from the
    product's own label.
    """
    for whole in checked.derived.procedures.values():
        yield from _meetings(whole)


def _meetings(whole: WholeProcedure) -> Iterator[Finding]:
    on_parts: dict[str, _Met] = {}
    in_basin: dict[str, dict[str, _Met]] = {}
    told: set[frozenset[str]] = set()
    for placed in whole.steps:
        action, basin = placed.action, placed.in_ or ""
        rinses = action == "rinse" and (placed.agent is None or placed.agent.family == "water")
        if rinses:
            on_parts.clear()
            in_basin.pop("", None)
        if placed.agent is not None:
            met = _Met(placed.agent, placed.step.step)
            held = in_basin.setdefault(basin, {})
            there = {**held, **({} if action in ONLY_IN_CONTAINER else on_parts)}
            for other in there.values():
                pair = frozenset({met.agent.agent, other.agent.agent})
                if pair not in told and _clash(met.agent, other.agent):
                    told.add(pair)
                    yield _finding(whole, placed, other, basin if other in held.values() else "")
            held.setdefault(met.agent.agent, met)
            if action not in ONLY_IN_CONTAINER and not rinses:
                on_parts.setdefault(met.agent.agent, met)
        if action in EMPTIES and basin:
            in_basin.pop(basin, None)
        if action == "discard":
            in_basin.pop("", None)


def _clash(one: Agent, other: Agent) -> bool:
    if one.agent == other.agent:
        return False
    return (
        other.family in one.never_with
        or one.family in other.never_with
        or frozenset({one.family, other.family}) in NEVER_TOGETHER
    )


def _finding(whole: WholeProcedure, placed: PlacedStep, other: _Met, basin: str) -> Finding:
    agent = placed.agent.name if placed.agent else ""
    where = f"in one basin ({basin})" if basin else "without a rinse between"
    return Finding(
        placed.step.place.at("agent"),
        f"{whole.procedure.procedure} brings {agent} in {placed.step.step} together with"
        f" {other.agent.name} of {other.step}, {where}; they must never meet",
        "Use another basin, or empty and rinse it first." if basin else "Rinse between the two.",
    )
