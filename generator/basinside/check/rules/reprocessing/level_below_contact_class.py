"""The rule level-below-contact-class."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.model.derived import NeededLevel
from basinside.model.words import at_least
from basinside.problem import Level


@rule(level=Level.STOP)
def check_level_below_contact_class(checked: Checked) -> Iterator[Finding]:
    """Each part gets at least the level that its gravest contact asks for.

    Why: what touches sterile tissue or blood must be sterile, what touches mucous membrane or
    broken skin needs high-level disinfection, what touches whole skin low-level disinfection. A
    procedure that stops below that carries germs from one patient to the next.
    A published level that differs for one part is written at the part as `level_decided`, with
    its source, the other view and two people. What is asked for `at_use` is held to the same.
    Bad: a mask with `touches: [mucous membrane]`, and a route with `level: low-level disinfection`.
    Good: the same mask on a route with `level: high-level disinfection`.
    Source: Spaulding's classes, as in CDC, Guideline for disinfection and sterilization in
    healthcare facilities, 2008.
    """
    for each in checked.sound:
        for part in each.whole.parts:
            needed = checked.needed(each.instrument, part)
            if "needle" in part.kinds:
                continue  # told by needles-reprocessed
            if not at_least(each.level, needed.level):
                why = "decided for it" if needed.decided else f"it touches {needed.contact}"
                yield Finding(
                    each.whole.procedure.place.at("route"),
                    f"{each.name} brings the {part.shown_name} to {each.level};"
                    f" {needed.level} is needed ({why})",
                    "Choose a route that reaches it, or give the part a route of its own.",
                    (part.place, each.instrument.place),
                )
    for instrument in checked.content.instruments.values():
        for part in instrument.parts:
            needed = checked.needed(instrument, part)
            yield from _decided_alone(needed)
            at_use = instrument.at_use.get(part.part)
            if at_use is not None and not at_least(at_use, needed.level):
                yield Finding(
                    instrument.place.at("at_use", part.part),
                    f"at_use lets the {part.shown_name} be used at {at_use};"
                    f" it touches {needed.contact} and needs {needed.level}",
                    f"Write “{part.part}: {needed.level}”, or “level_decided:” at the part.",
                    (part.place,),
                )


def _decided_alone(needed: NeededLevel) -> Iterator[Finding]:
    part, decided = needed.part, needed.decided
    if decided is None or at_least(decided.level, needed.by_contact):
        return
    second = (decided.second or "").strip().casefold()
    if second in {"", decided.by.strip().casefold()}:
        yield Finding(
            decided.place,
            f"{decided.level} for the {part.shown_name} is below its contact class and was decided"
            f" by {decided.by} alone",
            "A second person decides it too: write “second:”.",
            (part.place,),
        )
