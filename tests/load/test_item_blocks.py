"""Each kind of item is written with its own block, and what stands in it agrees."""

from pathlib import Path

import pytest

from tests.plain.clinic import patched, read

FILE = "quizzes/questions/kinds.yaml"
WRITTEN = (Path(__file__).parents[1] / "check" / "kinds.yaml").read_text(encoding="utf-8")
ENTRIES = WRITTEN[WRITTEN.index("    entries:") : WRITTEN.index("  - item: two-baths")]


def said(*changes: tuple[str, str]) -> list[str]:
    """Return what is said of the file with words of it changed, each standing there once."""
    text = WRITTEN
    for old, new in changes:
        assert text.count(old) == 1, old
        text = text.replace(old, new)
    lines = read(patched({"files": {FILE: text}})).lines
    return [each.removeprefix(f"{FILE}:") for each in lines if each.startswith(FILE)]


def test_what_is_written_well_is_read_without_a_word() -> None:
    assert said() == []


@pytest.mark.parametrize(
    ("old", "new", "line"),
    [
        (ENTRIES, "",
         ("4:5: “entries” is missing here; an item of kind “order” is answered with it"
          " [missing-key]")),
        ("    because: Each step makes the next one work.\n", "",
         "4:5: “because” is missing here: why this order and no other [missing-key]"),
        ("kind: order", "kind: choice",
         ("4:5: “options” is missing here; an item of kind “choice” is answered with it"
          " [missing-key]")),
        ("kind: order", "kind: choice",
         ("11:5: an item of kind “choice” has no “entries”; it has “options”. “entries” is for"
          " kind “order”. [unknown-key]")),
        ("    extra: [Steam]",
         ("    extra: [Steam]\n    number: {right: 3 uses, unsafe: neither,"
          " because: So}"),
         ("72:5: an item of kind “match” has no “number”; it has “pairs”. “number” is for kind"
          " “numeric”. [unknown-key]")),
        ("entry: brush", "entry: apart",
         ("15:16: there are two entries “apart” here; give one an id of its own"
          " [repeated-id]")),
        ("- first: apart\n", "- first: aprt\n",
         ("24:16: there is no entry “aprt” in this order. Write the id of an entry."
          " [unknown-id]")),
        ("- first: apart\n        then: brush", "- first: brush\n        then: apart",
         ("24:16: “brush” does not stand before “apart” in the entries. The entries are written"
          " in the right order; change one or the other. [bad-value]")),
        ("accept: {to: 45 min}", "accept: {}",
         "42:7: write “from”, “to” or both here [missing-key]"),
        ("    unsafe: below", "    unsafe: belwo",
         "43:15: unsafe: “belwo” is not a word of the list. Did you mean “below”? [unknown-word]"),
        ("right: {figure: bath.hold, times: 2}", "right: two",
         ('41:14: right cannot be “two”. Begin with the number in figures, as in "20 min", not'
          ' "two". [bad-value]')),
        ("right: {figure: bath.hold, times: 2}", "right: {figure: bath.hold, tims: 2}",
         "41:40: there is no key “tims” here. Did you mean “times”? [unknown-key]"),
        ("right: {figure: bath.hold, times: 2}", "right: {figure: bath.hld, times: 2}",
         "41:23: there is no value “bath.hld”. Did you mean “bath.hold”? [unknown-id]"),
        ("step: bulb-soak/wash", "step: bulb-soak/wsh",
         "17:15: there is no step “bulb-soak/wsh”. Did you mean “bulb-soak/wash”? [unknown-id]"),
        ("- right: Steam", "- right: Heat",
         ("61:20: nobody can choose “Heat” here. Write it as it stands in another pair, or among"
          " “extra”. [unknown-id]")),
        ("- right: Steam", "- right: Brush",
         "61:20: “Brush” is what belongs to it [bad-value]"),
        ("extra: [Steam]", "extra: [Steam, " + ", ".join(f"e{n}" for n in range(40)) + "]",
         ("56:5: 129 ways to pair left with right; at most 100 fit. Make two items of it."
          " [bad-value]")),
        ("pool: practice", "pool: assessment",
         ("5:11: a sealed form cannot hold an item of kind “order” yet. Move it to a file of"
          " “pool: practice”, or ask it as a choice. [bad-value]")),
    ],
)  # fmt: skip
def test_what_does_not_agree(old: str, new: str, line: str) -> None:
    found = said((old, new))
    tail = line.split(": ", 1)[1]
    assert any(each.endswith(tail) for each in found), found
    assert line in found, found


def test_two_lines_are_no_order() -> None:
    third = WRITTEN[WRITTEN.index("      - entry: put-under") : WRITTEN.index("    matters:")]
    matter = WRITTEN[WRITTEN.index("      - first: brush") : WRITTEN.index("    because: Each")]
    assert "11:5: an order needs at least 3 entries [bad-value]" in said((third, ""), (matter, ""))
