"""The rule storage-life-stated."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.storing import stored
from basinside.model.words import at_least
from basinside.problem import Level


@rule(level=Level.WARN)
def check_storage_life_stated(checked: Checked) -> Iterator[Finding]:
    """What was disinfected or sterilized has a last day on the shelf.

    Why: nobody can see how old a clean tray is. Sources differ between a week, a month and no date
    at all for a whole and dry pack; the clinic chooses, and the step that stores says it.
    Asked from high-level disinfection upwards; what touches whole skin only needs no date.
    Bad: `do: Keep it in the cupboard.`
    Good: `longest: {figure: store.high-level, before: use}` at the step with `action: store`.
    Source: IARC, Reference manual for screening, 2005, p.126 (a week wrapped, a week after
    high-level disinfection); Healthcare Infection 2013;18:121 (by event).
    """
    for each in checked.sound:
        if not at_least(each.level, "high-level disinfection"):
            continue
        stores = stored(checked, each)
        if not any(step.longest for step in stores):
            yield Finding(
                stores[0].place if stores else each.whole.procedure.place.at("stages"),
                f"{each.name} does not say how long {each.instrument.name} keeps in store",
                "Write “longest: {figure: ..., before: use}” at the step with “action: store”.",
                (each.whole.procedure.place,),
            )
