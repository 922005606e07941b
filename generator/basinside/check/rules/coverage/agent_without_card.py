"""The rule agent-without-card."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.chemicals import first_aid_asked
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.model.words import Family
from basinside.problem import Level

_HARMLESS: Final[frozenset[Family]] = frozenset({"water", "saline", "lubricant"})
"""What has no hazard signs as a rule (common practice)."""


@rule(level=Level.STOP)
def check_agent_without_card(checked: Checked) -> Iterator[Finding]:
    """A chemical that steps use says how it hurts, what is done then, and where it goes.

    Why: at the sink nobody looks for the maker's sheet. The card of a chemical is made of its
    `hazards`, its `first_aid` and its `waste`; one without them says that nothing can happen.
    Water, saline and lubricants need no hazards, water no first aid. What hurts and has no first
    aid is told by first-aid-for-agent, with the kinds of incident that it needs.
    Bad: `agent: chlorine` in a step, and `{agent: chlorine, name: Chlorine, family: chlorine}`.
    Good: besides, `hazards: [corrosive]`, `first_aid: [splash-eye]` and `waste: ...`
    Source: CDC, Guideline for disinfection and sterilization in healthcare facilities, 2008,
    recommendation 1 (staff are told of the hazards).
    """
    for name, user in _used(checked).items():
        agent = checked.content.agents.get(name)
        if agent is None:
            continue
        missing = []
        if not agent.hazards and agent.family not in _HARMLESS:
            missing.append("hazards")
        if not agent.first_aid and agent.family != "water" and not first_aid_asked(agent):
            missing.append("first_aid")
        if agent.waste is None:
            missing.append("waste")
        if missing:
            yield Finding(
                agent.place,
                f"{user} uses {agent.name} ({name}), and its card has no {listed(missing)}",
                "Write what its label and the maker's sheet say.",
            )


def _used(checked: Checked) -> dict[str, str]:
    """Return the chemicals that steps and their routes use, each with its first procedure."""
    found: dict[str, str] = {}
    for name, whole in checked.derived.procedures.items():
        if whole.route is not None and whole.route.agent is not None:
            found.setdefault(whole.route.agent, name)
        for placed in whole.steps:
            if placed.step.agent is not None:
                found.setdefault(placed.step.agent, name)
    return found
