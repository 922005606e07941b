"""The rule eye-flush-place-and-water."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.chemicals import HURTS
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.problem import Level


@rule(level=Level.STOP)
def check_eye_flush_place_and_water(checked: Checked) -> Iterator[Finding]:
    """Where things splash, it is written where eyes are rinsed and with what.

    Why: an eye is rinsed within seconds and for a quarter of an hour; a jug of water is empty
    before. Asked of each clinic that cleans instruments or uses a chemical that hurts. What eyes
    are rinsed with is not kept for a chemical.
    Bad: no `eye_flush` in the handbook; or one `with` a jug that has `only_for: [chlorine]`.
    Good: `eye_flush: [{at: sink 1, with: tap-with-hose}]`
    Source: WHO, Guidelines on drawing blood, 2010, annex (at least 10 minutes with water; texts
    on chemical splashes ask for 15).
    """
    handbook = checked.content.handbook
    if handbook is None:
        return
    places = handbook.clinic.eye_flush
    for each in places:
        thing = checked.content.equipment.get(each.with_)
        if thing is not None and thing.only_for:
            yield Finding(
                each.place.at("with"),
                f"eyes would be rinsed at {each.at} with {thing.name}, which is only for"
                f" {listed(thing.only_for)}",
                "Name clean water: a tap, a hose, or a bottle that is kept for eyes.",
                (thing.place,),
            )
    if not places and _splashes(checked):
        yield Finding(
            handbook.clinic.place,
            "something can splash here, and nothing says where eyes are rinsed and with what",
            "Write “eye_flush:” with the place and the equipment.",
            (handbook.place,),
        )


def _splashes(checked: Checked) -> bool:
    """Whether somebody cleans here, or uses a chemical that hurts."""
    return any(
        placed.action == "clean"
        or (placed.agent is not None and not HURTS.isdisjoint(placed.agent.hazards))
        for whole in checked.derived.procedures.values()
        for placed in whole.steps
    )
