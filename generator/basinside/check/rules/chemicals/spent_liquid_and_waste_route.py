"""The rule spent-liquid-and-waste-route."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked, Sound
from basinside.check.rule import Finding, rule
from basinside.model.derived import PlacedStep
from basinside.problem import Level


@rule(level=Level.WARN)
def check_spent_liquid_and_waste_route(checked: Checked) -> Iterator[Finding]:
    """A bath that was mixed is poured away or kept closed.

    Why: a used bath left standing is taken for a good one, or is poured onto what it must never
    meet. Kept is what is closed and labelled: a later step with `action: store`, or with `longest`
    and the life of its bath. Tasks that several procedures share are not asked for the end. A
    chemical that does not say where it goes is told by agent-without-card.
    Bad: a procedure with `action: mix` and no later `action: discard`.
    Good: a last step with `action: discard`, the chemical and its basin; `waste` at the chemical.
    Source: EngenderHealth, Infection prevention guidance, chlorine solutions (made fresh each
    day); common practice.
    """
    for each in checked.sound:
        for placed in each.whole.steps:
            if placed.action == "mix" and placed.step.agent and not _ends(each, placed):
                yield Finding(
                    placed.step.place,
                    f"{each.name} mixes a bath in {placed.step.step} and neither pours it away nor"
                    " keeps it closed",
                    "Put a step with “action: discard”, the chemical and its basin at the end.",
                    (each.whole.procedure.place,),
                )


def _ends(each: Sound, mixed: PlacedStep) -> bool:
    life = mixed.agent.life.figure if mixed.agent and mixed.agent.life else None
    for placed in each.whole.steps[mixed.number :]:
        step = placed.step
        same = step.agent == mixed.step.agent or (placed.in_ and placed.in_ == mixed.step.in_)
        if placed.action in {"discard", "store"} and same:
            return True
        if life and step.longest and step.longest.figure == life:
            return True
    return False
