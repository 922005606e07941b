"""The rule container-fits."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.saying import amount, listed
from basinside.model.derived import WholeProcedure
from basinside.model.equipment import Agent
from basinside.model.procedure import Step
from basinside.model.prose import references
from basinside.problem import Level
from basinside.units import Kind


@rule(level=Level.STOP)
def check_container_fits(checked: Checked) -> Iterator[Finding]:
    """A chemical is in a container that may hold it, and that holds as much as is mixed.

    Why: metal rusts in chlorine and uses it up; a basin that served two chemicals mixes what is
    left of them; a bath that runs over is filled less, and is then too strong or too small. Of
    tools that a step works `with`, only what they are for is asked, and metal for mixing.
    Bad: `agent: chlorine` with `in: wash-basin`, which has `only_for: [detergent]`, or a basin
    with `metal: yes`, or one that `holds: 2 L` for 5 L.
    Good: `in: chlorine-basin` with `only_for: [chlorine]` and `holds: 5 L`.
    Source: MSF, Cholera guideline, appendix 15 (plastic, not metal; a stirrer of wood or plastic);
    reports of an event of 2004 (machine oil in drums for detergent of two hospitals).
    """
    for whole in checked.derived.procedures.values():
        for placed in whole.steps:
            if placed.agent is not None and placed.agent.family != "water":
                yield from _unfit(checked, whole, placed.step, placed.agent)
            if placed.action == "mix" and placed.in_:
                yield from _too_small(checked, whole, placed.step)


def _unfit(checked: Checked, whole: WholeProcedure, step: Step, agent: Agent) -> Iterator[Finding]:
    named = [("in", step.in_)] if step.in_ else []
    for key, name in (*named, *(("with", each) for each in step.with_)):
        thing = checked.content.equipment.get(name)
        if thing is None:
            continue
        also = (whole.procedure.place, step.place, thing.place)
        if thing.only_for and step.agent not in thing.only_for:
            yield Finding(
                step.place.at(key),
                f"{whole.procedure.procedure} uses {thing.name} for {agent.name} in {step.step}; it"
                f" is only for {listed(thing.only_for)}",
                "Use one that is for it, or write it under “only_for:”.",
                also,
            )
        if agent.family == "chlorine" and thing.metal and (key == "in" or step.action == "mix"):
            yield Finding(
                step.place.at(key),
                f"{whole.procedure.procedure} has {agent.name} in {thing.name} in {step.step};"
                " metal rusts in it and uses it up",
                "Use plastic.",
                also,
            )


def _too_small(checked: Checked, whole: WholeProcedure, step: Step) -> Iterator[Finding]:
    thing = checked.content.equipment.get(step.in_ or "")
    if thing is None or thing.holds is None or thing.holds.kind is not Kind.VOLUME:
        return
    figures = checked.content.figures
    volumes = [
        figures[each.figure].value
        for text in (step.do, step.wall or "")
        for each in references(text)
        if each.figure in figures and figures[each.figure].value.kind is Kind.VOLUME
    ]
    if volumes and max(volumes) > thing.holds:
        yield Finding(
            step.place.at("in"),
            f"{whole.procedure.procedure} mixes {amount(max(volumes))} in {step.step}; {thing.name}"
            f" holds {amount(thing.holds)}",
            "Take a larger one, or mix less and work out its amount anew.",
            (whole.procedure.place, step.place, thing.place),
        )
