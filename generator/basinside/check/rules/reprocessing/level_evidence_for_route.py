"""The rule level-evidence-for-route."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.STOP)
def check_level_evidence_for_route(checked: Checked) -> Iterator[Finding]:
    """A route in use has a source that says which level it reaches on this instrument.

    Why: that a part survives a bath does not say that the bath makes it safe. These are two facts
    with two sources: `survives` at the part, `reaches` at the instrument.
    Bad: `survives: {source: larch-instructions §4, routes: {boil: yes}}` and no `reaches`.
    Good: besides, `reaches: {boil: {level: high-level disinfection, source: iarc-manual p.130}}`.
    Source: common practice.
    """
    for each in checked.sound:
        if each.route.route not in each.instrument.reaches:
            yield Finding(
                each.whole.procedure.place.at("route"),
                f"nothing says that {each.route.route} brings {each.instrument.instrument} to"
                f" {each.route.level}; that its parts survive it is another fact",
                f"Write “{each.route.route}” under “reaches:” of the instrument, with its source.",
                (each.instrument.place,),
            )
