"""The gravest contact decides the least level, unless a level is decided by name."""

import pytest

from basinside.derive.levels import gravest_contact, highest_needed, needed_level
from basinside.model.instrument import Part
from basinside.model.words import CONTACT_GRAVITY, LEVEL_FOR_CONTACT
from tests.derive.clinic import changed, demo, loaded
from tests.plain.clinic import base_files

# CDC, Guideline for Disinfection and Sterilization in Healthcare Facilities, 2008: critical items
# sterile, semi-critical at least high-level, non-critical low-level disinfection.
SPAULDING = {
    "sterile tissue": "sterile",
    "blood stream": "sterile",
    "mucous membrane": "high-level disinfection",
    "broken skin": "high-level disinfection",
    "whole skin": "low-level disinfection",
    "never the patient": "clean and dry",
}


def part(**written: object) -> Part:
    return Part.model_validate({"@": ("x", ()), "part": "a", "count": "1", **written})


@pytest.mark.parametrize("contact", SPAULDING)
def test_one_contact(contact: str) -> None:
    found = needed_level(part(touches=(contact,)))
    assert (found.contact, found.level, found.decided) == (contact, SPAULDING[contact], None)
    assert set(SPAULDING) == set(LEVEL_FOR_CONTACT)


@pytest.mark.parametrize("lighter", range(len(CONTACT_GRAVITY)))
@pytest.mark.parametrize("graver", range(len(CONTACT_GRAVITY)))
def test_of_two_contacts_the_graver_decides(graver: int, lighter: int) -> None:
    both = (CONTACT_GRAVITY[lighter], CONTACT_GRAVITY[graver])
    found = needed_level(part(touches=both))
    assert found.contact == CONTACT_GRAVITY[min(graver, lighter)]
    assert found.level == SPAULDING[found.contact]


def test_a_part_that_touches_nothing_written_needs_to_be_clean_and_dry() -> None:
    assert needed_level(part(touches=())).level == "clean and dry"


def test_a_level_decided_by_name_stands_beside_what_the_contact_asks() -> None:
    decided = """touches: [whole skin, mucous membrane]
    level_decided:
      level: sterile
      source: maker §4
      other_view: Its contact alone asks for less.
      by: infection-prevention lead
      second: midwife in charge
      on: 2026-02-01
      look_again: 2027-02-01"""
    bulb = changed("touches: [whole skin, mucous membrane]", decided).instruments["bulb"]
    body, tip = (needed_level(each) for each in bulb.parts)
    assert (tip.by_contact, tip.level) == ("high-level disinfection", "sterile")
    assert tip.decided is not None
    assert (body.by_contact, body.level) == ("clean and dry", "clean and dry")
    assert highest_needed(bulb) == "sterile"
    assert gravest_contact(bulb) == "mucous membrane"


def test_an_instrument_without_parts_needs_nothing_more() -> None:
    single = demo().instruments["mucus-extractor"]
    assert highest_needed(single) == "clean and dry"
    assert gravest_contact(single) == "never the patient"
    assert highest_needed(loaded(base_files()).instruments["bulb"]) == "high-level disinfection"
