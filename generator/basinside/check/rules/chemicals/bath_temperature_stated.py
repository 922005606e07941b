"""The rule bath-temperature-stated."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.chemicals import baths, to_level
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.STOP)
def check_bath_temperature_stated(checked: Checked) -> Iterator[Finding]:
    """A chemical bath has a least temperature, and it is measured in the bath each time.

    Why: a bath that is a few degrees too cold works so slowly that its time is over before it has
    worked. The room is no measure: a bath in a cold room at dawn is colder still. It is stated at
    the route or at a step, and measured by the step that measures the strength, or written down.
    Bad: a chemical route without `temperature`, and no step that has one.
    Good: `temperature: {figure: bath.temperature}` at a step with `action: measure strength`.
    Source: CDC, Guideline for disinfection and sterilization in healthcare facilities, 2008,
    tables 1 and 4 (each time stands beside 20 °C or more).
    """
    for each, agent in baths(checked):
        steps = to_level(each)
        level = steps[-1].step if steps else None
        stated = each.route.temperature or any(
            placed.temperature and placed.step.agent in {None, agent.agent} for placed in steps
        )
        if level is None:
            continue
        if not stated:
            yield Finding(
                level.place,
                f"{each.name} does not say how warm the bath of {agent.name} must be",
                "Write “temperature:” at the route and at the step that measures it.",
                (each.whole.procedure.place,),
            )
            continue
        measured = any(
            placed.action == "measure strength" and placed.temperature for placed in steps
        ) or any("temperature" in placed.writes for placed in each.whole.steps)
        if not measured:
            yield Finding(
                level.place,
                f"{each.name} states how warm the bath of {agent.name} must be, and nobody"
                " measures it",
                "Write “temperature:” at a step with “action: measure strength” before it.",
                (each.whole.procedure.place,),
            )
