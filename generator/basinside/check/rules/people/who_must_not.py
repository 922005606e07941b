"""The rule who-must-not."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.chemicals import fumes
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.STOP)
def check_who_must_not(checked: Checked) -> Iterator[Finding]:
    """A chemical that fumes or makes allergic names who asks before working with it.

    Why: one bath can bring on asthma or a rash that last for life. Whoever has either, or is
    pregnant, finds out before the bottle is open, and somebody else does it.
    Bad: `hazards: [toxic, sensitiser]` without `who_asks_first`.
    Good: `who_asks_first: [anyone with asthma, anyone who is pregnant or breastfeeding]`
    Source: CDC, Guideline for disinfection and sterilization in healthcare facilities, 2008, table
    5 (irritation and allergy from aldehydes); common practice.
    """
    for agent in checked.content.agents.values():
        if fumes(agent) and not agent.who_asks_first:
            yield Finding(
                agent.place,
                f"{agent.name} can harm some people for life, and its card does not say who asks"
                " before working with it",
                "Write “who_asks_first:”.",
            )
