"""The rule stock-aged."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.model.words import ProductKind
from basinside.problem import Level

AGES: Final[frozenset[ProductKind]] = frozenset({"liquid", "powder", "tablets"})


@rule(level=Level.WARN)
def check_stock_aged(checked: Checked) -> Iterator[Finding]:
    """What a disinfectant is made from has an age after which it is not used.

    Why: bleach, powder and tablets lose strength on the shelf, faster in heat and once opened. A
    bath from old stock is weak however well it was measured out. Asked of each chemical by which
    a route gives its level, or that a step mixes to a stated strength.
    Bad: `product: {kind: liquid, strength: 5 % available chlorine}` without `stock_life`.
    Good: besides, `stock_life: {figure: chlorine.stock-age}`.
    Source: Iqbal and others, Shelf-life of chlorine solutions, PLoS ONE 2016;11(5):e0156136; CDC,
    Guideline for disinfection and sterilization, 2008, table 4 (shelf life unopened).
    """
    used = {each.route.agent for each in checked.sound if each.route.agent}
    for whole in checked.derived.procedures.values():
        used.update(
            placed.step.agent
            for placed in whole.steps
            if placed.action == "mix" and placed.step.strength and placed.step.agent
        )
    for name, agent in checked.content.agents.items():
        product = agent.product
        if name in used and product and product.kind in AGES and agent.stock_life is None:
            yield Finding(
                product.place,
                f"{name} does not say how old its {product.kind} may grow before it is mixed",
                "Write “stock_life:” with its figure.",
                (agent.place,),
            )
