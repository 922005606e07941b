"""The rule fill-line-fits."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.saying import amount
from basinside.model.prose import references
from basinside.problem import Level
from basinside.quantity import Quantity
from basinside.units import Kind

FULL_ENOUGH: Final = 10
"""A fill line stands at a tenth of what a container holds at least (our own bound)."""


@rule(level=Level.STOP)
def check_fill_line_fits(checked: Checked) -> Iterator[Finding]:
    """A fill line stands inside its container, and not at its bottom.

    Why: what is filled to the line is made up to that volume. A line above the rim, or at
    millilitres where litres are meant, makes another strength of each bath.
    Asked of each container that `holds` an amount and whose `note` names a volume that is a value.
    Bad: `holds: 2 L` and `note: The fill line stands at {{ bath.volume }}.` of 2.5 L, or of 2 mL.
    Good: the same with a `bath.volume` of 2 L.
    Source: common practice.
    """
    for thing in checked.content.equipment.values():
        if thing.holds is None or thing.holds.kind is not Kind.VOLUME or not thing.note:
            continue
        for each in references(thing.note):
            figure = checked.content.figures.get(each.figure)
            if figure is None or figure.value.kind is not Kind.VOLUME:
                continue
            if not _fits(figure.value, thing.holds):
                yield Finding(
                    thing.place.at("note"),
                    f"{thing.name} has its line at {amount(figure.value)} ({each.figure}), and"
                    f" holds {amount(thing.holds)}",
                    "Look at both, and at their units.",
                    (thing.place, figure.place),
                )


def _fits(line: Quantity, holds: Quantity) -> bool:
    return line <= holds and line.base * FULL_ENOUGH >= holds.base
