"""What several rules know about chemicals: which hurt, which fume, and which steps use a bath."""

from __future__ import annotations

from typing import Final

from basinside.check.checked import Checked, Sound
from basinside.model.derived import PlacedStep
from basinside.model.equipment import Agent
from basinside.model.words import Action, Family, Hazard, IncidentKind

HURTS: Final[frozenset[Hazard]] = frozenset({"corrosive", "irritant", "toxic"})
"""What a splash does to eye and skin (the words of the globally harmonized system, GHS)."""
FUMES: Final[frozenset[Hazard]] = frozenset({"sensitiser", "gas with acid", "toxic"})
FUMING: Final[frozenset[Family]] = frozenset({"chlorine", "aldehyde", "peracetic"})
"""Families whose vapour has an occupational limit: CDC, Guideline for disinfection and
sterilization, 2008, table 4 (glutaraldehyde); chlorine and peracetic acid from memory."""
DISINFECTANTS: Final[frozenset[Family]] = frozenset(
    {"chlorine", "aldehyde", "peroxide", "peracetic", "alcohol"}
)
IN_THE_BATH: Final[frozenset[Action]] = frozenset(
    {"handle", "mix", "load", "expose", "soak", "wipe", "clean"}
)
"""Actions by which hands come near an open bath or a wet cloth."""


def fumes(agent: Agent) -> bool:
    """Whether what rises from a chemical can hurt who breathes it."""
    return agent.family in FUMING or not FUMES.isdisjoint(agent.hazards)


def first_aid_asked(agent: Agent) -> tuple[IncidentKind, ...]:
    """Return the kinds of incident that the first aid of a chemical leads to."""
    hurt: tuple[IncidentKind, ...] = ("eye splash", "skin splash", "swallowed")
    breathed: tuple[IncidentKind, ...] = ("breathed in",)
    hurts = not HURTS.isdisjoint(agent.hazards)
    return (*(hurt if hurts else ()), *(breathed if fumes(agent) else ()))


def baths(checked: Checked) -> tuple[tuple[Sound, Agent], ...]:
    """Return the procedures whose level is given in a chemical bath, each with its chemical."""
    agents = checked.content.agents
    named = ((each, agents.get(each.route.agent or "")) for each in checked.sound)
    return tuple((each, agent) for each, agent in named if agent and each.route.kind == "chemical")


def to_level(each: Sound) -> tuple[PlacedStep, ...]:
    """Return a procedure's steps up to the first that gives the level; all when none does."""
    levels = each.level_steps
    last = levels[0].number if levels else len(each.whole.steps)
    return each.whole.steps[:last]
