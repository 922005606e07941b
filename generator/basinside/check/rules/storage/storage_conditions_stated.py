"""The rule storage-conditions-stated."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.storing import stored
from basinside.problem import Level


@rule(level=Level.WARN)
def check_storage_conditions_stated(checked: Checked) -> Iterator[Finding]:
    """What is clean is kept dry, and closed against dust.

    Why: damp and dust bring germs back, and a pack that gets wet is no longer sterile. Of 59
    facilities that were looked at, none dried and stored as it should be.
    Bad: `do: Put it on the shelf.`
    Good: `do: Keep it in the closed, dry cupboard.` with `makes_sure: [dry and closed]` at the
    step that stores it.
    Source: CDC, Guidelines for infection control in dental health-care settings, 2003 (closed or
    covered cabinets, not under sinks); Fast and others, BMJ Global Health 2017;2(Suppl 4):e000428.
    """
    for each in checked.sound:
        if each.level == "clean and dry":
            continue
        stores = stored(checked, each)
        if not any("dry and closed" in step.makes_sure for step in stores):
            yield Finding(
                stores[0].place if stores else each.whole.procedure.place.at("stages"),
                f"{each.name} does not say that {each.instrument.name} is kept dry and closed",
                "Say it where it is stored, and write “makes_sure: [dry and closed]” there.",
                (each.whole.procedure.place,),
            )
