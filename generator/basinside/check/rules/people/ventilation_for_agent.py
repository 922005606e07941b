"""The rule ventilation-for-agent."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.chemicals import IN_THE_BATH, fumes
from basinside.check.rule import Finding, rule
from basinside.model.derived import WholeProcedure
from basinside.problem import Level


@rule(level=Level.STOP)
def check_ventilation_for_agent(checked: Checked) -> Iterator[Finding]:
    """Where a chemical fumes, there is air from outside before it is opened.

    Why: chlorine and aldehydes irritate eyes and lungs and can bring on asthma for life; somebody
    who smells them has breathed them already. It is asked of each chlorine, aldehyde and peracetic
    acid, and of what is toxic, makes allergic or gives gas. The air is thought of in the first
    step that handles the chemical, or in one before it.
    Bad: a step that mixes chlorine, and nothing before it about a window.
    Good: `ventilation` at the chemical; `makes_sure: [air from outside]` or a danger of kind `gas`.
    Source: CDC, Guideline for disinfection and sterilization in healthcare facilities, 2008,
    tables 4 and 5 (limits in the air, irritation); MSF, Cholera guideline, appendix 15.
    """
    for agent in checked.content.agents.values():
        if fumes(agent) and not agent.ventilation:
            yield Finding(
                agent.place,
                f"{agent.name} fumes, and its card does not say where the air comes from",
                "Write “ventilation:”.",
            )
    for whole in checked.derived.procedures.values():
        yield from _opened(whole)


def _opened(whole: WholeProcedure) -> Iterator[Finding]:
    """Yield a finding for the first step that opens what fumes while no air was thought of."""
    for placed in whole.steps:
        step = placed.step
        if "air from outside" in placed.makes_sure or (
            placed.danger and placed.danger.kind == "gas"
        ):
            return
        if placed.agent and placed.action in IN_THE_BATH and fumes(placed.agent):
            yield Finding(
                step.place,
                f"{whole.procedure.procedure} opens {placed.agent.name} in {step.step}, and nothing"
                " before it makes sure of air from outside",
                "Write “makes_sure: [air from outside]” at the step that opens the window.",
                (whole.procedure.place, placed.agent.place),
            )
            return
