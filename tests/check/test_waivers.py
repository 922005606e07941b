"""Which waivers there are, and where they stand."""

from basinside.check.waivers import all_waivers
from basinside.model.instrument import Instrument, Part
from basinside.problem import any_stop
from tests.check.clinic import base_files, look_at, patched

WAIVER = """
{0}waive:
{0}  - rule: {1}
{0}    because: The manual is at the binder's.
{0}    by: infection-prevention lead
{0}    second: midwife in charge
{0}    on: 2026-02-01
{0}    until: 2026-12-01
"""
BULB = "content/instruments/bulb.yaml"
VARIANT = {"content/instruments/pump.yaml": "instrument: pump\nvariant_of: bulb\nname: Pump\n"}


def with_waiver_at_a_part() -> dict[str, bytes]:
    old = "    touches: [never the patient]\n"
    new = old + WAIVER.format("    ", "part-tolerance-decides").lstrip("\n")
    return patched({"replace": [{"file": BULB, "old": old, "new": new}], "files": VARIANT})


def test_a_waiver_that_a_variant_shares_is_named_once() -> None:
    (found,) = all_waivers(look_at(with_waiver_at_a_part()).content)
    assert found.waiver.rule == "part-tolerance-decides"
    assert isinstance(found.owner, Part)
    assert found.place[:2] == (BULB, ("parts", 0))
    assert found.waiver.place[:2] == (BULB, ("parts", 0, "waive", 0))


def test_a_variant_does_not_inherit_a_waiver_of_its_sibling() -> None:
    files = dict(base_files())
    files[BULB] += WAIVER.format("", "level-evidence-for-route").lstrip("\n").encode()
    files.update({name: text.encode() for name, text in VARIANT.items()})
    owners = [each.owner for each in all_waivers(look_at(files).content)]
    assert [each.instrument for each in owners if isinstance(each, Instrument)] == ["bulb"]


def test_a_waived_problem_does_not_stop_and_an_unwaived_does() -> None:
    gone = {
        "old": "    basis: published\n    source: manual p.4\n",
        "file": "content/figures/all.yaml",
    }
    waived = "    basis: published" + WAIVER.format("    ", "source-missing")
    assert not any_stop(look_at(patched({"replace": [{**gone, "new": waived}]})).problems)
    bare = "    basis: published\n"
    assert any_stop(look_at(patched({"replace": [{**gone, "new": bare}]})).problems)
