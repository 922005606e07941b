"""The rule part-tolerance-decides."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked, Sound
from basinside.check.rule import Finding, rule
from basinside.model.instrument import Part
from basinside.problem import Level


@rule(level=Level.STOP)
def check_part_tolerance_decides(checked: Checked) -> Iterator[Finding]:
    """Every part that a procedure covers survives its route; the weakest part decides.

    Why: one part that melts, swells or rusts ruins the instrument, often without a sign before
    it fails at a patient. What nobody states is not allowed. Parts may take routes of their own:
    name them with `parts:` in each procedure; then every part needs a procedure.
    Bad: a procedure with `route: boil` for an instrument whose bag has `boil: no`.
    Good: a procedure with `route: chlorine-hld`, which each part survives.
    Source: the maker's instructions, cited at `survives`.
    """
    covered: dict[str, set[str]] = {}
    for each in checked.sound:
        covered.setdefault(each.instrument.instrument, set()).update(
            part.part for part in each.whole.parts
        )
        for part in each.whole.parts:
            if not part.stands(each.route.route):
                yield _against(checked, each, part)
    for name, parts in covered.items():
        for part in checked.content.instruments[name].parts:
            if part.part not in parts:
                yield Finding(
                    part.place,
                    f"no procedure covers the {part.shown_name} of {name}",
                    "Add it to “parts:” of one of its procedures.",
                    (checked.content.instruments[name].place,),
                )


def _against(checked: Checked, each: Sound, part: Part) -> Finding:
    source = f" ({checked.cited(part.survives.source)})" if part.survives else ""
    if part.stands(each.route.route) is None:
        said = f"; nothing states whether the {part.shown_name} survives it{source}"
    else:
        said = f", which the {part.shown_name} does not survive{source}"
    message = f"{each.name} takes the route {each.route.route}{said}"
    return Finding(
        each.whole.procedure.place.at("route"),
        message,
        "Choose another route, or give the part a route of its own.",
        (part.place, each.instrument.place),
    )
