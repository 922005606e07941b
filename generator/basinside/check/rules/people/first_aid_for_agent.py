"""The rule first-aid-for-agent."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.chemicals import HURTS, fumes
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.model.words import IncidentKind
from basinside.problem import Level


@rule(level=Level.STOP)
def check_first_aid_for_agent(checked: Checked) -> Iterator[Finding]:
    """A chemical that hurts leads to what to do about the eye, the skin, a mouthful, a breath.

    Why: the first minute decides about an eye, and nobody looks for a page in it. Which incident
    is meant is read from its `kinds`, never from its name. A breath is asked of what fumes.
    Bad: `hazards: [corrosive]` with `first_aid: [spill]`.
    Good: `first_aid: [splash-eye, splash-skin, swallowed]`, whose incidents have the kinds
    `eye splash`, `skin splash` and `swallowed`; and one of kind `breathed in`.
    Source: WHO, Guidelines on drawing blood, 2010, annex (eyes are rinsed at once); common
    practice.
    """
    incidents = checked.content.incidents
    for agent in checked.content.agents.values():
        wanted: list[IncidentKind] = []
        if not HURTS.isdisjoint(agent.hazards):
            wanted = ["eye splash", "skin splash", "swallowed"]
        if fumes(agent):
            wanted.append("breathed in")
        led = {
            kind for name in agent.first_aid if name in incidents for kind in incidents[name].kinds
        }
        missing = [f"“{kind}”" for kind in wanted if kind not in led]
        if missing:
            yield Finding(
                agent.place.at("first_aid") if agent.first_aid else agent.place,
                f"the first aid of {agent.agent} leads to nothing of the kind {listed(missing)}",
                "Name an incident under “first_aid:” that has it among its “kinds:”.",
                (agent.place,),
            )
