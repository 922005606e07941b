"""Every id names something; every value mentioned in a sentence is known and fits its unit."""

import pytest

from basinside.load.content import load
from basinside.load.mentions import mentions_in
from tests.plain.clinic import base_files, patched, read

PROCEDURE = "content/procedures/bulb-soak.yaml"
INSTRUMENT = "content/instruments/bulb.yaml"
HANDBOOK = "content/handbook.yaml"
LOOK = "        do: Look at each part.\n"


def told(file: str, old: str, new: str) -> list[str]:
    files = patched({"replace": [{"file": file, "old": old, "new": new}]})
    lines = read(files).lines
    return [each for each in lines if each.endswith("[unknown-id]")]


def test_the_valid_clinic_names_nothing_unknown() -> None:
    assert load(base_files())[1] == []


@pytest.mark.parametrize(
    ("file", "old", "new", "line"),
    [
        (PROCEDURE, "instrument: bulb", "instrument: bulp",
         "2:13: there is no instrument “bulp”. Did you mean “bulb”?"),
        (PROCEDURE, "route: chlorine-bath", "route: chlorine-hath",
         "3:8: there is no route “chlorine-hath”. Did you mean “chlorine-bath”?"),
        (PROCEDURE, LOOK, LOOK + "        agent: soap\n",
         "31:16: there is no agent “soap”. Write it in content/agents/, or name another."),
        (PROCEDURE, LOOK, LOOK + "        in: wash-basim\n",
         "31:13: there is no equipment “wash-basim”. Did you mean “wash-basin”?"),
        (PROCEDURE, LOOK, LOOK + "        choice: bath.presoaks\n",
         "31:17: there is no choice “bath.presoaks”. Did you mean “bath.presoak”?"),
        (PROCEDURE, LOOK, LOOK + "        wait: {figure: bath.held}\n",
         "31:24: there is no value “bath.held”. Did you mean “bath.hold”?"),
        (PROCEDURE, LOOK, "        do: Look for {{ bath.holt }} or so.\n",
         "30:22: there is no value “bath.holt”. Did you mean “bath.hold”?"),
        (PROCEDURE, "route: chlorine-bath", "route: chlorine-bath\nvessel: tal",
         "4:9: there is no vessel “tal”. Did you mean “tall”?"),
        (INSTRUMENT, "take_apart: [tip]", "take_apart: [tipp]",
         "16:14: there is no part “tipp”. Did you mean “tip”?"),
        (INSTRUMENT, "at_use: {tip:", "at_use: {tips:",
         "17:16: there is no part “tips”. Did you mean “tip”?"),
        (PROCEDURE, LOOK, LOOK + "        parts: [tip, lid]\n",
         ("31:22: there is no part “lid”. Inside brackets a comma begins a new entry; did it cut a"
         " sentence? Then write one entry to a line, each after “- ”.")),
        (PROCEDURE, "route: chlorine-bath", "route: chlorine-bath\nparts: [body, tap]",
         "4:15: there is no part “tap”. Did you mean “tip”?"),
        (INSTRUMENT, "drawing: bulb.svg",
         "look_alikes:\n  - {instrument: pum, tell_apart: It is blue.}\ndrawing: bulb.svg",
         "19:18: there is no instrument “pum”. Write it in content/instruments/, or name another."),
        (HANDBOOK, "has: [chlorine-bath, steam]", "has: [chlorine-bath, steams]",
         "17:24: there is no route “steams”. Did you mean “steam”?"),
        (HANDBOOK, "has: [chlorine-bath, steam]",
         "has: [chlorine-bath, steam]\n  cases_per_year: {bulbs: 3}",
         "18:27: there is no instrument “bulbs”. Did you mean “bulb”?"),
        (HANDBOOK, "has: [chlorine-bath, steam]",
         ("has: [chlorine-bath, steam]\n  emergency:\n    - {for: [bulb, bulbs], when: Now.,"
          " do: Ring., by: lead, second: midwife, on: 2026-02-01, look_again: 2027-02-01}"),
         "19:20: there is no instrument “bulbs”. Did you mean “bulb”?"),
        (HANDBOOK, "clinic:", "policy:\n  - scope: bulbs\nclinic:",
         "9:12: there is no scope or procedure “bulbs”. Did you mean “bulb-soak”?"),
        (HANDBOOK, "clinic:", "scopes:\n  all-bulbs: [bulb-soaks]\nclinic:",
         "9:15: there is no procedure “bulb-soaks”. Did you mean “bulb-soak”?"),
        ("content/routes/chlorine-bath.yaml", "agent: chlorine", "agent: clorine",
         "5:8: there is no agent “clorine”. Did you mean “chlorine”?"),
    ],
)  # fmt: skip
def test_a_name_for_nothing_gets_the_nearest(file: str, old: str, new: str, line: str) -> None:
    lines = [each.removeprefix(f"{file}:") for each in told(file, old, new)]
    assert f"{line} [unknown-id]" in lines


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("a: b\n", []),
        (
            "a: {{ x.y }} b {{ x.z in minutes }}\n",
            [("x.y", "", (1, 4)), ("x.z", "minutes", (1, 16))],
        ),
        ("# {{ x.y }}\n  # {{ x.y }}\na: {{x.y}}\n", [("x.y", "", (3, 4))]),
        ("a: >-\n  one\n  two {{ x.y\n  in  h }}\n", [("x.y", "h", (3, 7))]),
        ("a: {{ x }} {{ X.y }} {{ x.y * 2 }} { { x.y } }\n", []),
    ],
)
def test_mentions_are_found_with_their_place(text: str, found: list[object]) -> None:
    assert [tuple(each) for each in mentions_in(text)] == found


@pytest.mark.parametrize(
    ("about", "line"),
    [
        ("chlorine.bath", "there is no value “chlorine.bath”. Write it in a file of content/"),
        ("bath.holt", "there is no value “bath.holt”. Did you mean “bath.hold”?"),
        ("bulb-soak/wsh", "there is no step “bulb-soak/wsh”. Did you mean “bulb-soak/wash”?"),
        ("chlorine-bat", "there is no entry “chlorine-bat”. Did you mean “chlorine-bath”?"),
    ],
)  # fmt: skip
def test_what_is_near_is_sought_among_its_own_kind_only(about: str, line: str) -> None:
    file = "quizzes/questions/bath.yaml"
    old = "about: [bulb-soak/start-timing]"
    assert any(line in each for each in told(file, old, f"about: [{about}]"))
