"""The rule strength-checked."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked, Sound
from basinside.check.chemicals import baths, to_level
from basinside.check.rule import Finding, rule
from basinside.check.saying import amount
from basinside.model.derived import PlacedStep
from basinside.model.equipment import Agent
from basinside.problem import Level


@rule(level=Level.STOP)
def check_strength_checked(checked: Checked) -> Iterator[Finding]:
    """The strength of a bath is measured before each use, with the strip made for it.

    Why: nobody sees or smells that a bath has grown weak. Routine chlorine baths in a neonatal
    ward took no germs off the bag-masks until the way of making them was mended. It is measured
    after the bath was mixed and before parts go in (`load`, or else the level step), and the
    chemical says what the strip must show. A wipe is used as soon as it is made up, and not asked.
    Bad: mix, load, expose.
    Good: mix, `action: measure strength` with strips among its `needs`, load, expose; and
    `strength_check: {how: ..., at_least: {figure: chlorine.hld-strength}}` at the chemical.
    Source: HICPAC sample audit tool (the strip meant for that chemical, before each use); White
    and others, Global Health Science and Practice 2025;13(1):e2300398 (bag-masks in chlorine).
    """
    told: set[str] = set()
    for each, agent in baths(checked):
        if agent.agent not in told:
            told.add(agent.agent)
            yield from _limit(checked, each, agent)
        yield from _measured(checked, each, agent)


def _limit(checked: Checked, each: Sound, agent: Agent) -> Iterator[Finding]:
    check = agent.strength_check
    if check is None:
        return
    if check.at_least is None:
        yield Finding(
            check.place,
            f"{agent.agent} does not say what its strip must show",
            "Write “at_least:” with its figure.",
            (agent.place,),
        )
        return
    shown, wanted = checked.figure(check.at_least), checked.figure(each.route.strength)
    if shown and wanted and shown.value.kind is wanted.value.kind and shown.value < wanted.value:
        yield Finding(
            check.at_least.place.at("figure"),
            f"the strip of {agent.agent} passes at {amount(shown.value)}; {each.route.route} asks"
            f" for {amount(wanted.value)} ({checked.cited(wanted.source)})",
            also=(agent.place,),
        )


def _measured(checked: Checked, each: Sound, agent: Agent) -> Iterator[Finding]:
    steps = to_level(each)
    measuring = [
        placed
        for placed in steps
        if placed.action == "measure strength" and placed.step.agent in {None, agent.agent}
    ]
    if not steps:
        return
    mixed = [p.number for p in steps if p.action == "mix" and p.step.agent == agent.agent]
    loaded = [p for p in steps if p.action == "load" and p.step.agent == agent.agent]
    goes_in = loaded[0] if loaded else steps[-1]
    measured = measuring[-1].number if measuring else 0
    if not measuring or measured > goes_in.number or (mixed and measured < mixed[-1]):
        when = "after it was mixed and before" if mixed else "before"
        yield Finding(
            goes_in.step.place,
            f"{each.name} does not measure the strength of {agent.name} {when} {goes_in.step.step}",
            "Put a step with “action: measure strength” before it.",
            (each.whole.procedure.place,),
        )
    elif not _has_strip(checked, each, measuring):
        yield Finding(
            measuring[-1].step.place,
            f"{each.name} measures the strength of {agent.name} in {measuring[-1].step.step}, and"
            " no strip is among its needs",
            "Write the strip under “needs:”; its equipment has “kind: strip or indicator”.",
            (each.whole.procedure.place,),
        )


def _has_strip(checked: Checked, each: Sound, measuring: list[PlacedStep]) -> bool:
    names = [*each.route.needs]
    for placed in measuring:
        names.extend((*placed.step.needs, *placed.with_))
    equipment = checked.content.equipment
    return any(name in equipment and equipment[name].kind == "strip or indicator" for name in names)
