"""The rule first-aid-for-agent."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.chemicals import first_aid_asked
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.problem import Level


@rule(level=Level.STOP, of_all=True)
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
        led = {
            kind for name in agent.first_aid if name in incidents for kind in incidents[name].kinds
        }
        missing = [f"“{kind}”" for kind in first_aid_asked(agent) if kind not in led]
        if not missing:
            continue
        if agent.first_aid:
            said = f"the first aid of {agent.agent} leads to nothing of the kind {listed(missing)}"
        else:
            said = f"{agent.agent} has no first aid, and needs it for {listed(missing)}"
        yield Finding(
            agent.place.at("first_aid") if agent.first_aid else agent.place,
            said,
            "Name under “first_aid:” incidents that have it among their “kinds:”.",
            (agent.place,),
        )
