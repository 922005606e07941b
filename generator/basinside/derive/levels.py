"""The least level that each part needs, and why."""

from __future__ import annotations

from basinside.model.derived import NeededLevel
from basinside.model.instrument import Instrument, Part
from basinside.model.words import (
    CARE_LEVELS,
    CONTACT_GRAVITY,
    LEVEL_FOR_CONTACT,
    CareLevel,
    Contact,
)


def needed_level(part: Part) -> NeededLevel:
    """Return the least level of a part.

    The gravest contact decides (Spaulding's classes); a published level decided by name for this
    part replaces it, in whichever direction.
    """
    lightest: Contact = "never the patient"
    contact = min(part.touches or (lightest,), key=CONTACT_GRAVITY.index)
    by_contact = LEVEL_FOR_CONTACT[contact]
    decided = part.level_decided
    return NeededLevel(
        part=part,
        contact=contact,
        by_contact=by_contact,
        level=decided.level if decided else by_contact,
        decided=decided,
    )


def highest_needed(instrument: Instrument) -> CareLevel:
    """Return the highest level that any part of the instrument needs."""
    return max(
        (needed_level(part).level for part in instrument.parts),
        key=CARE_LEVELS.index,
        default="clean and dry",
    )


def gravest_contact(instrument: Instrument) -> Contact:
    """Return the gravest contact of any part."""
    return min(
        (needed_level(part).contact for part in instrument.parts),
        key=CONTACT_GRAVITY.index,
        default="never the patient",
    )
