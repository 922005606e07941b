"""The rule bath-labelled."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.check.task_steps import at_its_step
from basinside.model.derived import PlacedStep, WholeProcedure
from basinside.problem import Level


@rule(level=Level.STOP)
def check_bath_labelled(checked: Checked) -> Iterator[Finding]:
    """A bath that is kept has a label: since when or until when, and how strong.

    Why: clear water without a label has been drunk and poured into eyes, and nobody can see how
    old a bath is. The day ends it before the strip does.
    Asked of what a task makes up, and of a `mix` in any other procedure that does not pour the bath
    away at its end, when its chemical has a `life`. After it a step with `action: label` writes the
    date or the use-by date; and the strength, unless the product is used as strong as it is bought.
    Bad: mix the bath, close it, and no label.
    Good: `action: label` with `writes: [item, strength, date, staff code]` after `action: mix`.
    Source: WHO, Laboratory biosafety manual (solutions labelled with date and strength), from
    memory; common practice.
    """
    for whole in checked.derived.procedures.values():
        mixed = next((each for each in whole.steps if _to_keep(whole, each)), None)
        if mixed is not None:
            missing = _unwritten(checked, whole, mixed)
            if missing:
                yield at_its_step(
                    whole,
                    mixed,
                    f"{whole.procedure.procedure} mixes in {mixed.step.step} a bath that is kept,"
                    f" and no label after it says {listed(missing)}",
                    "Put a step with “action: label” after it, and write what it says in"
                    " “writes:”.",
                )


def _to_keep(whole: WholeProcedure, placed: PlacedStep) -> bool:
    agent, step = placed.agent, placed.step
    if step.action != "mix" or agent is None or agent.life is None:
        return False
    return whole.instrument is None or not any(
        later.action == "discard" and later.step.agent == agent.agent
        for later in whole.steps[placed.number :]
    )


def _unwritten(checked: Checked, whole: WholeProcedure, mixed: PlacedStep) -> list[str]:
    """Return what no label says that is written after the bath was filled for the last time."""
    last = max(
        placed.number
        for placed in whole.steps
        if placed.action == "mix" and placed.in_ == mixed.step.in_
    )
    level = next((each.number for each in whole.steps if each.is_level_step), len(whole.steps))
    written = {
        word
        for placed in whole.steps[last:level]
        if placed.action == "label"
        for word in placed.writes
    }
    missing = [] if written & {"date", "use-by date"} else ["since when it stands"]
    if "strength" not in written and not _as_bought(checked, mixed):
        missing.append("how strong it is")
    return missing


def _as_bought(checked: Checked, mixed: PlacedStep) -> bool:
    product = mixed.agent.product if mixed.agent else None
    made = checked.figure(mixed.step.strength)
    return product is not None and made is not None and product.strength == made.value
