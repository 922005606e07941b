"""The rule poured-away-was-mixed."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.task_steps import at_its_step
from basinside.model.derived import PlacedStep, WholeProcedure
from basinside.problem import Level


@rule(level=Level.STOP)
def check_poured_away_was_mixed(checked: Checked) -> Iterator[Finding]:
    """Who pours a bath away at the end mixes one at the beginning, or leads to where it is mixed.

    Why: when each load pours the bath away, the next one finds an empty basin, and somebody fills
    it by eye.
    A step with `action: discard` and a chemical that has a `life` asks for `action: mix` with a
    chemical in the same container (`in`) in the same procedure.
    Bad: measure, load, expose, rinse, pour the bath away.
    Good: mix, measure, load, expose, rinse, pour the bath away.
    Source: common practice.
    """
    for whole in checked.derived.procedures.values():
        for placed in whole.steps:
            if _pours_bath_away(placed) and not _mixes(whole, placed.in_):
                yield at_its_step(
                    whole,
                    placed,
                    f"{whole.procedure.procedure} pours a bath away in {placed.step.step} and mixes"
                    " none",
                    "Put a step with “action: mix”, the chemical and the same “in:” before it.",
                )


def _pours_bath_away(placed: PlacedStep) -> bool:
    agent = placed.agent
    return placed.step.action == "discard" and agent is not None and agent.life is not None


def _mixes(whole: WholeProcedure, basin: str | None) -> bool:
    return any(each.step.action == "mix" and each.in_ == basin for each in whole.steps)
