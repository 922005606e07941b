"""The rule water-named-for-use."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.chemicals import DISINFECTANTS
from basinside.check.rule import Finding, rule
from basinside.model.derived import PlacedStep
from basinside.problem import Level


@rule(level=Level.WARN)
def check_water_named_for_use(checked: Checked) -> Iterator[Finding]:
    """Each rinse, soak and mixing says which water: drinking, boiled or sterile.

    Why: the same word rinse means tap water before the level and boiled water after it. Infections
    of 35 patients came from the water in which instruments were rinsed after a disinfectant.
    A chemical that is used as it is sold gets no water and is not asked; nor is a soak in a
    disinfectant that was mixed before.
    Bad: `action: rinse` without `water`.
    Good: `action: rinse` with `water: boiled`.
    Source: Journal of Hospital Infection 2006, doi 10.1016/j.jhin.2006.07.021 (145 infections in
    35 patients, from rinse water).
    """
    for whole in checked.derived.procedures.values():
        for placed in whole.steps:
            step = placed.step
            if step.water or not _takes_water(checked, placed):
                continue
            yield Finding(
                step.place,
                f"{whole.procedure.procedure} does not say with which water {step.step} is done"
                f" ({placed.action})",
                "Write “water: drinking”, “boiled” or “sterile”.",
                (whole.procedure.place,),
            )


def _takes_water(checked: Checked, placed: PlacedStep) -> bool:
    step, agent = placed.step, placed.agent
    family = agent.family if agent else None
    if placed.action == "rinse":
        return True
    if placed.action == "soak":
        return family not in DISINFECTANTS
    if placed.action != "mix":
        return False
    product = agent.product if agent else None
    if product is None or product.kind == "ready to use":
        return product is None
    wanted = checked.figure(step.strength)
    if step.strength is not None and wanted is None:
        return False  # nobody knows while the value cannot be read
    return not (wanted and product.strength and wanted.value == product.strength)
