"""The rule lubricant-fits."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.taken_over import taken_over
from basinside.model.derived import PlacedStep, WholeProcedure
from basinside.model.instrument import Instrument, Part
from basinside.model.words import at_least
from basinside.problem import Level


@rule(level=Level.STOP)
def check_lubricant_fits(checked: Checked) -> Iterator[Finding]:
    """A part gets the lubricant that it asks for, and none after the level if it meets patients.

    Why: petroleum jelly makes seals swell, and steam does not pass through machine oil to the
    metal under it. In two hospitals oil that stood in drums for detergent went over the
    instruments of thousands of patients. What is put on after the level goes into the patient.
    The `agent` of a step with `action: lubricate` is of `family: lubricant` and the one that the
    part names in `lubricate: {with: ..}`; a part that asks for none gets none.
    Bad: `action: lubricate` without `agent`; hinge oil on the seal.
    Good: `agent: silicone-lubricant` for a seal with `lubricate: {with: silicone-lubricant}`.
    Source: the maker's instructions, cited at the part; the drums of oil (2004) read second-hand.
    """
    for instrument in checked.content.instruments.values():
        for part in instrument.parts:
            asked = part.lubricate
            if asked and taken_over(instrument, asked.place):
                continue
            agent = checked.content.agents.get(asked.with_) if asked else None
            if asked and agent and agent.family != "lubricant":
                yield Finding(
                    asked.place.at("with"),
                    f"the {part.shown_name} of {instrument.instrument} asks to be lubricated with"
                    f" {agent.name}, which is no lubricant",
                    "Name a chemical of “family: lubricant”.",
                    (part.place, instrument.place),
                )
    for whole in checked.derived.procedures.values():
        if whole.instrument is not None:
            for placed in whole.steps:
                if placed.action == "lubricate":
                    yield from _step(checked, whole, whole.instrument, placed)


def _step(
    checked: Checked, whole: WholeProcedure, instrument: Instrument, placed: PlacedStep
) -> Iterator[Finding]:
    step, agent = placed.step, placed.agent
    name = whole.procedure.procedure
    also = (whole.procedure.place, step.place, instrument.place)
    if agent is None:
        said = f"{name} lubricates in {step.step} and does not say with what"
        yield Finding(step.place, said, "Name the lubricant in “agent:”.", also)
        return
    if agent.family != "lubricant":
        said = f"{name} lubricates in {step.step} with {agent.name}, which is no lubricant"
        yield Finding(step.place.at("agent"), said, "Name a lubricant in “agent:”.", also)
        return
    parts = [part for part in whole.parts if part.part in step.parts] or [
        part for part in whole.parts if part.lubricate
    ]
    if not parts:
        said = f"{name} lubricates in {step.step}, and no part asks for it"
        yield Finding(step.place, said, "Write “lubricate:” at the part that asks for it.", also)
    for part in parts:
        said, mend = _unfit(checked, whole, instrument, placed, part, agent.agent)
        if said:
            message = f"{name} lubricates in {step.step} the {part.shown_name} with {agent.name}"
            yield Finding(step.place.at("agent"), f"{message}{said}", mend, (*also, part.place))


def _unfit(
    checked: Checked,
    whole: WholeProcedure,
    instrument: Instrument,
    placed: PlacedStep,
    part: Part,
    agent: str,
) -> tuple[str, str]:
    """Return what is wrong and its mend, or two empty texts."""
    if part.lubricate is None:
        return "; it asks for none", "Leave it out, or write “lubricate:” at the part."
    if part.lubricate.with_ != agent:
        asked = checked.content.agents.get(part.lubricate.with_)
        return (
            f"; it asks for {asked.name if asked else part.lubricate.with_}",
            f"Write “agent: {part.lubricate.with_}”.",
        )
    given = whole.route is not None and placed.before == "processed"
    needed = checked.needed(instrument, part).level
    if given and at_least(needed, "high-level disinfection"):
        return (
            f" after its level, and it needs {needed}",
            "Lubricate it before the level, with what its route passes through.",
        )
    return "", ""
