"""The rule bath-life-whichever-first."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked, Sound
from basinside.check.chemicals import baths, to_level
from basinside.check.rule import Finding, rule
from basinside.model.equipment import Agent
from basinside.problem import Level


@rule(level=Level.STOP)
def check_bath_life_whichever_first(checked: Checked) -> Iterator[Finding]:
    """A bath ends by its days, by a failed strip or when cloudy; the first of them counts.

    Why: a strip cannot see soil, and a date cannot see that somebody carried water in. A bath
    that is not mixed fresh in the procedure is looked at in it: its date, its look, its strip.
    Bad: a bath that stands for days, `life` at its chemical, and no step that looks at its date.
    Good: `life` and `strength_check` at the chemical, and before the parts go in a step with
    `makes_sure: [bath still good]`, or with `action: mix`.
    Source: CDC, Guideline for disinfection and sterilization in healthcare facilities, 2008,
    table 4 (reuse life and least strength); HICPAC sample audit tool (strip and solution in date).
    """
    told: set[str] = set()
    for each, agent in baths(checked):
        if agent.agent not in told:
            told.add(agent.agent)
            yield from _of_agent(agent)
        yield from _of_procedure(each, agent)


def _of_agent(agent: Agent) -> Iterator[Finding]:
    if agent.life is None:
        message = f"{agent.agent} does not say how long a bath of it lasts"
        yield Finding(agent.place, message, "Write “life:” with its figure.")
    if agent.strength_check is None:
        message = f"{agent.agent} does not say how the strength of its bath is checked"
        yield Finding(
            agent.place, message, "Write “strength_check:” with how it is done and “at_least:”."
        )


def _of_procedure(each: Sound, agent: Agent) -> Iterator[Finding]:
    steps = [placed.step for placed in to_level(each)]
    if not steps:
        return
    fresh = any(step.action == "mix" and step.agent == agent.agent for step in steps)
    if fresh or any("bath still good" in step.makes_sure for step in steps):
        return
    yield Finding(
        steps[-1].place,
        f"{each.name} takes a bath of {agent.name} that it did not mix, and no step before looks"
        " whether it is still good: its date, its look, its strip",
        "Write “makes_sure: [bath still good]” at the step that looks.",
        (each.whole.procedure.place,),
    )
