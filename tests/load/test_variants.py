"""A sibling is its parent with what differs; each key keeps the place it was written at."""

from typing import Any

from basinside.load.marked_yaml import read_yaml
from basinside.load.variants import merge_variants
from basinside.model.instrument import Instrument
from basinside.problem import Problem

PARENT = """\
instrument: pump
name: Pump
label: several patients
units: [P1, P2]
look_alikes:
  - instrument: pump-soft
    tell_apart: It is clear.
parts:
  - part: bulb
    count: 1
    touches: [never the patient]
    survives: {source: maker §1, routes: {boil: yes, steam: yes}}
    retire_when:
      - {sign: torn, then: replace part}
  - part: tip
    count: 2
    touches: [mucous membrane]
    survives: {source: maker §1, routes: {boil: yes}}
  - part: cap
    count: 1
    touches: [whole skin]
reaches:
  boil: {level: high-level disinfection, source: maker §2}
take_apart: [bulb, tip]
"""
CHILD = """\
instrument: pump-soft
variant_of: pump
name: Soft pump
parts:
  - part: bulb
    survives: {source: maker §9, routes: {boil: no}}
    retire_when:
      - {sign: sticky, then: retire whole}
  - part: string
    count: 1
    touches: [whole skin]
without: [cap]
take_apart: [tip]
"""


def merged(**texts: str) -> tuple[dict[str, Instrument], list[Problem]]:
    written: dict[str, dict[str, Any]] = {}
    for name, text in texts.items():
        data, problems = read_yaml(text.encode(), f"{name}.yaml")
        assert problems == ()
        written[f"{name}.yaml"] = data
    return merge_variants(written)


def test_maps_merge_key_by_key_parts_by_id_and_other_lists_are_replaced() -> None:
    whole, problems = merged(parent=PARENT, child=CHILD)
    assert problems == []
    soft = whole["child.yaml"]
    assert [part.part for part in soft.parts] == ["bulb", "tip", "string"]
    bulb, tip, _ = soft.parts
    assert bulb.survives is not None
    assert bulb.survives.routes == {"boil": False, "steam": True}
    assert bulb.survives.source == "maker §9"
    assert [each.sign for each in bulb.retire_when] == ["sticky"]
    assert (bulb.count, tip.count) == (1, 2)
    assert soft.take_apart == ("tip",)
    assert soft.label == "several patients"
    assert soft.reaches["boil"].level == "high-level disinfection"


def test_what_names_the_parent_alone_is_not_inherited() -> None:
    whole, _ = merged(parent=PARENT, child=CHILD)
    soft = whole["child.yaml"]
    assert (soft.units, soft.look_alikes) == ((), ())
    assert (soft.instrument, soft.variant_of) == ("pump-soft", "pump")


def test_the_parent_stays_as_it_was() -> None:
    alone, _ = merged(parent=PARENT)
    beside, _ = merged(parent=PARENT, child=CHILD)
    assert beside["parent.yaml"] == alone["parent.yaml"]


def test_each_key_keeps_the_place_it_was_written_at() -> None:
    whole, _ = merged(parent=PARENT, child=CHILD)
    bulb, tip, string = whole["child.yaml"].parts
    assert (bulb.place.file, tip.place.file) == ("parent.yaml", "parent.yaml") or (
        bulb.place.file,
        tip.place.file,
    ) == ("child.yaml", "parent.yaml")
    assert string.place.file == "child.yaml"
    assert string.place.path == ("parts", 1)


def test_a_variant_of_a_variant() -> None:
    third = "instrument: pump-tiny\nvariant_of: pump-soft\nname: Tiny pump\nwithout: [string]\n"
    whole, problems = merged(child=CHILD, third=third, parent=PARENT)
    assert problems == []
    assert [part.part for part in whole["third.yaml"].parts] == ["bulb", "tip"]


def test_no_parent_and_a_circle_are_lines_at_variant_of() -> None:
    lost = merged(child=CHILD)
    assert lost[0] == {}
    assert [each.message for each in lost[1]] == [
        "there is no instrument “pump” to be a variant of"
    ]
    one = "instrument: one\nvariant_of: two\nname: One\n"
    two = "instrument: two\nvariant_of: one\nname: Two\n"
    round_and_round = merged(one=one, two=two)
    assert round_and_round[0] == {}
    assert {each.message for each in round_and_round[1]} == {"variants lead round in a circle"}
    assert all(each.place.path == ("variant_of",) for each in round_and_round[1])


def test_a_part_that_a_variant_takes_away_must_be_there() -> None:
    whole, problems = merged(parent=PARENT, child=CHILD.replace("[cap]", "[cup]"))
    assert [each.message for each in problems] == ["there is no part “cup” to leave out"]
    assert [part.part for part in whole["child.yaml"].parts] == ["bulb", "tip", "cap", "string"]
