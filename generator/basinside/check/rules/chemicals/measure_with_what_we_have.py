"""The rule measure-with-what-we-have."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from basinside.check.checked import Checked
from basinside.check.house import next_measurable, written
from basinside.check.mixtures import NOTED_WHEN_STRONGER, strength_made
from basinside.check.rule import Finding, rule
from basinside.check.saying import amount, rounded_down
from basinside.model.equipment import Agent
from basinside.model.figure import Figure, WorkedOut
from basinside.model.prose import references
from basinside.problem import Level
from basinside.units import PPM_IN_PERCENT, Kind

NEAR: Final = Fraction(1, 100)
"""How far a true strength may be rounded where it is shown (our own)."""


@rule(level=Level.STOP)
def check_measure_with_what_we_have(checked: Checked) -> Iterator[Finding]:
    """An amount of product can be measured with the clinic's own jug, syringe and spoon.

    Why: 14.3 mL is read off no jug, and whoever cannot measure it guesses. What a value is worked
    out to is rounded up to the marks of the house, never down, and where it then is noticeably
    stronger, the page of the chemical shows how strong it truly is. Liquids are asked; a powder is
    asked when one of the measures is in grams, as a scale is none of them; parts need no marks.
    Bad: `value: 28.6 mL` with `worked_out: {of: chlorine, ...}`, and a jug with marks of 50 mL.
    Good: `value: 50 mL`, and its true strength in a value that `prepare` refers to.
    Source: WHO, Laboratory biosafety manual, table 12, in which 4 tablets of 1.5 g stand for
    0.5 % and truly make 0.6 %; common practice.
    """
    handbook = checked.content.handbook
    if handbook is None:
        return
    for name, figure in checked.content.figures.items():
        worked, kind = figure.worked_out, figure.value.kind
        if worked is None or worked.of is None or figure.value.base <= 0:
            continue
        if _too_weak(checked, figure, worked):
            continue  # told by worked-out-elsewhere: first the amount is put right
        if kind is not Kind.VOLUME and kind is not Kind.MASS:
            continue
        true = next_measurable(checked, kind, figure.value.base)
        if true is not None:
            yield from _measured(name, figure, true)
        elif kind is Kind.VOLUME:
            yield Finding(
                handbook.clinic.place,
                f"nobody can measure {amount(figure.value)} ({name}): no measure of the clinic is"
                " written down",
                "Write its jugs, syringes and spoons under “measures:”.",
                (figure.place,),
            )
        agent = checked.content.agents.get(worked.of)
        if agent is not None:
            yield from _strength_shown(checked, name, figure, worked, agent)


def _too_weak(checked: Checked, figure: Figure, worked: WorkedOut) -> bool:
    agent, wanted = checked.content.agents.get(worked.of or ""), checked.figure(worked.to)
    held = agent.product.strength if agent and agent.product else None
    if held is None or wanted is None or wanted.value.kind is not Kind.CHLORINE:
        return False
    whole = checked.figure(worked.in_)
    made = strength_made(held, figure.value, whole.value if whole else None)
    return made is not None and made < wanted.value.base


def _measured(name: str, figure: Figure, true: Fraction) -> Iterator[Finding]:
    if true == figure.value.base:
        return
    said = written(true, figure.value.kind)
    yield Finding(
        figure.place.at("value"),
        f"{name} is {amount(figure.value)}; with the clinic's measures the next amount that can be"
        f" measured is {said}",
        f"Write {said}, and show the strength that it makes.",
        (figure.place,),
    )


def _strength_shown(
    checked: Checked, name: str, figure: Figure, worked: WorkedOut, agent: Agent
) -> Iterator[Finding]:
    """Yield a finding when an amount was rounded up far and nobody reads how strong it makes."""
    wanted, whole = checked.figure(worked.to), checked.figure(worked.in_)
    held = agent.product.strength if agent.product else None
    if wanted is None or held is None or wanted.value.kind is not Kind.CHLORINE:
        return
    made = strength_made(held, figure.value, whole.value if whole else None)
    if made is None or made <= wanted.value.base * NOTED_WHEN_STRONGER:
        return
    figures = checked.content.figures
    shown = [
        figures[each.figure].value
        for each in references(agent.prepare or "")
        if each.figure in figures
    ]
    if any(
        value.kind is Kind.CHLORINE and abs(value.base - made) <= made * NEAR for value in shown
    ):
        return
    yield Finding(
        figure.place.at("value"),
        f"{name}, {amount(figure.value)}, makes {_percent(made)} and not the"
        f" {amount(wanted.value)} that is asked for, and {agent.agent} does not show it",
        f"Keep {_percent(made)} as a value, and refer to it in “prepare:”.",
        (agent.place,),
    )


def _percent(ppm: Fraction) -> str:
    percent = ppm / PPM_IN_PERCENT
    few = rounded_down(float(percent)) if percent >= 1 else f"{float(percent):.3g}"
    return f"{few} % available chlorine"
