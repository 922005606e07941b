"""The rule mixed-to-another-strength."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import ceil, floor
from typing import Final

from basinside.check.checked import Checked
from basinside.check.mixtures import MUCH_TOO_STRONG
from basinside.check.rule import Finding, rule
from basinside.check.saying import amount
from basinside.model.derived import PlacedStep, WholeProcedure
from basinside.model.equipment import Agent
from basinside.model.figure import Figure
from basinside.model.prose import references
from basinside.problem import Level
from basinside.quantity import Quantity
from basinside.units import PPM_IN_PERCENT, Kind

LARGEST_PERCENT: Final = 100


@rule(level=Level.STOP)
def check_mixed_to_another_strength(checked: Checked) -> Iterator[Finding]:
    """What a step measures out makes the strength that the step states, with the product we hold.

    Why: somebody buys another bottle and changes its strength, and the wall chart goes on asking
    for the old amount: 100 mL of 3.5 % in 5 L make 0.07 % and not 0.1 %, and nobody can see that.
    Asked of each step that mixes a product of stated strength to a stated strength and names two
    values in its “do” or its “wall”: how much, and how much in all. More than twice as strong is
    wrong too. A step that names one amount only cannot be asked.
    Bad: `strength: 3.5 % available chlorine` in the product, and 100 mL for 5 L of 0.1 %.
    Good: the same product, and 145 mL.
    Source: CDC, Best practices for environmental cleaning, appendix E: parts of water.
    """
    for agent in checked.content.agents.values():
        held = _held(agent)
        if held is not None and not 0 < held.base <= LARGEST_PERCENT * PPM_IN_PERCENT:
            place = agent.product.place if agent.product else agent.place
            message = f"{agent.agent} cannot hold {amount(held)}"
            yield Finding(place.at("strength"), message, "Copy it from its label.")
    seen: set[tuple[str, ...]] = set()
    for whole in checked.derived.procedures.values():
        if "mix" not in whole.actions:
            continue
        for placed in whole.steps:
            for part, volume in _measured(checked, placed):
                step = placed.step
                key = (
                    part,
                    volume,
                    step.agent or "",
                    step.strength.figure if step.strength else "",
                )
                if key not in seen:
                    seen.add(key)
                    yield from _against(checked, whole, placed, part, volume)


def _held(agent: Agent | None) -> Quantity | None:
    """Return the strength of the product, when it is one of chlorine."""
    held = agent.product.strength if agent and agent.product else None
    return held if held and held.kind is Kind.CHLORINE else None


def _measured(checked: Checked, placed: PlacedStep) -> Iterator[tuple[str, str]]:
    """Yield the ids of how much and how much in all, for each text of a mixing step with both."""
    if placed.action != "mix":
        return
    step = placed.step
    wanted = checked.figure(step.strength)
    if wanted is None or wanted.value.kind is not Kind.CHLORINE:
        return
    for text in (step.do, step.wall or ""):
        named = dict.fromkeys(each.figure for each in references(text))
        found = [
            (name, checked.content.figures[name].value) for name in named if _has(checked, name)
        ]
        masses = [name for name, value in found if value.kind is Kind.MASS]
        volumes = sorted((value.base, name) for name, value in found if value.kind is Kind.VOLUME)
        pair = [*masses, *(name for _, name in volumes)]
        if len(pair) == len(("how much", "in all")) and volumes:
            yield pair[0], pair[1]


def _has(checked: Checked, name: str) -> bool:
    return name in checked.content.figures


def _against(
    checked: Checked, whole: WholeProcedure, placed: PlacedStep, part: str, volume: str
) -> Iterator[Finding]:
    held, wanted = _held(placed.agent), checked.figure(placed.step.strength)
    if held is None or wanted is None or held.base <= 0:
        return
    figure, in_all = checked.content.figures[part], checked.content.figures[volume]
    if in_all.value.base <= 0:
        return
    made = held.base * figure.value.base / in_all.value.base
    if wanted.value.base <= made <= wanted.value.base * MUCH_TOO_STRONG:
        return
    yield Finding(
        figure.place.at("value"),
        f"{whole.procedure.procedure}/{placed.step.step} mixes {amount(figure.value)} of"
        f" {amount(held)} in {amount(in_all.value)}; that makes {_percent(made)}, and not the"
        f" {amount(wanted.value)} that it states",
        _mend(part, figure, held, wanted.value.base / held.base * in_all.value.base),
        (placed.step.place,),
    )


def _percent(ppm: Fraction) -> str:
    """Return a strength, never more than it is: what is too weak never reads as enough."""
    return f"{floor(ppm) / PPM_IN_PERCENT:g} %"


def _mend(part: str, figure: Figure, held: Quantity, needed: Fraction) -> str:
    unit = "g" if figure.value.kind is Kind.MASS else "mL"
    return (
        f"Write {ceil(needed)} {unit} or a little more for {part}, and work out anew each other"
        f" value that rests on {amount(held)}."
    )
