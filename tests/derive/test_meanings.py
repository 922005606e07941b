"""What a step means, to the byte: a changed digest would put every person on a refresh list."""

import json
from collections.abc import Mapping
from pathlib import Path

import pytest
import rfc8785

from basinside.canonical import canonical_bytes
from basinside.derive.meanings import (
    line_digest,
    scope_digest,
    sequence_digest,
    sequence_of,
    settled_text,
    step_digest,
    step_meaning,
)
from basinside.derive.steps import place_steps
from basinside.model.content import Content
from tests.derive.clinic import demo, loaded, step_of
from tests.derive.golden_clinic import GOLDEN_FILES

DEVELOPERS = Path(__file__).resolve().parents[2] / "DEVELOPERS.md"

MEANING = (
    '{"action":"expose","agent":"chlorine","danger":"corrosive","do":"Put it under for 1200 s, that'
    ' is 1200 s; café spoons stay out.","hold":{"from":"the last part is under","if_interrupted":'
    '"Start again.","no_longer_than":"3600 s","value":"1200 s"},"in":"basin","longest":{"before":'
    '"rinsing","value":"7200 s"},"needs":["clock","basin"],"parts":["rim","foot"],"parts_are":'
    '"apart","route":"bath","safety":true,"soil_state":"soiled","step":"put-under","strength":'
    '"5000 ppm available chlorine","temperature":"25 °C","vessel":"tall","wait":"30 s","wall":'
    '"Under for 1200 s.","water":"boiled","wear":["apron","eye protection","heavy gloves"],"with":'
    '["tongs"],"wrap":"no"}'
)
STEP = "step-v1:b0Ahnx56j9rxp3Q1PS4hntDefblwXTNzBRwtr1NJVRQ"
SEQUENCE = "sequence-v1:cIrhPRKKIi1TTNF892BEIS60BhY42Dze8oV7fI1KIr8"
SCOPE = "scope-v1:EXyXIg0rwnW2y0grV6gmTGux4vOg4hkhgLSHBKGXdps"
LINE = "line-v1:mwqnzB255AgHTogoz9SG6_Dbgg8zk2vVUQsFEOTn810"


def replaced(pairs: Mapping[str, str]) -> Content:
    files = dict(GOLDEN_FILES)
    for old, new in pairs.items():
        (name,) = [each for each, text in files.items() if text.count(old) == 1]
        files[name] = files[name].replace(old, new)
    return loaded({name: text.encode() for name, text in files.items()})


def digest_of(content: Content, path: str = "cup-bath/put-under") -> str:
    return step_digest(step_meaning(content, *step_of(content, path)))


def test_the_golden_step() -> None:
    content = replaced({})
    meaning = step_meaning(content, *step_of(content, "cup-bath/put-under"))
    assert canonical_bytes(meaning).decode() == MEANING
    assert rfc8785.dumps(json.loads(MEANING)).decode() == MEANING
    assert step_digest(meaning) == STEP


def test_the_golden_sequence_scope_and_line() -> None:
    content = replaced({})
    whole = place_steps(content, content.procedures["cup-bath"])
    assert sequence_of(whole) == [["disinfection", "put-under"], ["disinfection", "pull-apart"]]
    assert sequence_digest(sequence_of(whole)) == SEQUENCE
    assert scope_digest(content, [whole]) == SCOPE
    assert line_digest("looks-first", "Looks first.") == LINE


def test_contributors_read_the_same_example() -> None:
    text = DEVELOPERS.read_text(encoding="utf-8")
    assert MEANING in "".join(text.split("\n"))
    assert STEP in text


COUNTS = {
    "a value": {"bath.hold: {is: hold, value: 20 min": "bath.hold: {is: hold, value: 25 min"},
    "a word to do": {"spoons stay out": "spoons may stay"},
    "safety": {"        safety: yes\n": ""},
    "what is worn": {"wear: [heavy gloves, apron]": "wear: [thin gloves, apron]"},
    "what the chemical adds": {"wear: [eye protection, apron]": "wear: [face shield, apron]"},
    "the danger": {"kind: corrosive": "kind: gas"},
    "from when": {"from: the last part is under": "from: the first part is under"},
    "an interruption": {"if_interrupted: Start again.": "if_interrupted: Go on."},
    "a limit": {"          no_longer_than: {figure: bath.longest}\n": ""},
    "the next before": {"before: rinsing": "before: drying"},
    "the wall": {"wall: Under for": "wall: Below for"},
    "a part": {"parts: [rim, foot]\n        parts_are": "parts: [rim]\n        parts_are"},
    "apart": {"parts_are: apart": "parts_are: together"},
    "the water": {"water: boiled": "water: sterile"},
    "the basin": {"        in: basin\n": "        in: tongs\n"},
    "the tool": {"with: [tongs]": "with: [basin]"},
    "the wrap": {"wrap: no": "wrap: yes"},
    "the order of what is needed": {"needs: [clock, basin]": "needs: [basin, clock]"},
    "the vessel": {"vessel: tall\nstages": "stages"},
    "the action": {"action: expose": "action: soak"},
}
COUNTS_NOT = {
    "why": {"why: A late part has had less.": "why: It needs the time."},
    "what the danger says": {"say: Keep your face away.": "say: Stand back."},
    "the order of what is worn": {"wear: [heavy gloves, apron]": "wear: [apron, heavy gloves]"},
    "white space": {"Put  it under": "Put it   under"},
    "the form of a letter": {"cafe\u0301": "café"},
    "another way to write a value": {"value: 20 min": "value: 1200 s"},
    "the unit a value is shown in": {"{{ bath.hold in hours }}": "{{ bath.hold }}"},
    "what a value is": {"{is: hold,": "{is: time under,"},
    "the edition": {"edition: 2026.1": "edition: 2026.2"},
    "a name": {"name: Cup": "name: Large cup"},
    "another step": {"do: Pull it apart.": "do: Pull it to pieces."},
}


@pytest.mark.parametrize("what", COUNTS)
def test_a_change_counts_in(what: str) -> None:
    assert digest_of(replaced(COUNTS[what])) != STEP


@pytest.mark.parametrize("what", COUNTS_NOT)
def test_a_change_does_not_count_in(what: str) -> None:
    assert digest_of(replaced(COUNTS_NOT[what])) == STEP


def test_a_step_that_uses_the_instruments_own_lines_changes_with_them() -> None:
    before = digest_of(replaced({}), "cup-bath/pull-apart")
    other = replaced({"take_apart: [rim, foot]": "take_apart: [foot, rim]"})
    assert digest_of(other, "cup-bath/pull-apart") != before
    assert digest_of(other) == STEP


def test_the_demonstrations_test_step_carries_the_function_test() -> None:
    content = demo()
    path = "bag-mask-silicone-boil/function-test"
    meaning = step_meaning(content, *step_of(content, path))
    lines = content.instruments["bag-mask-silicone"].function_test
    assert [each["do"] for each in meaning["instrument_lines"]] == [
        settled_text(line.do, content.figures) for line in lines
    ]


def test_the_scope_changes_with_a_step_and_with_the_order() -> None:
    def scope(pairs: Mapping[str, str]) -> str:
        content = replaced(pairs)
        return scope_digest(content, [place_steps(content, content.procedures["cup-bath"])])

    moved = {"- stage: disinfection": "- stage: sterilization"}
    assert len({SCOPE, scope(COUNTS["safety"]), scope(moved)}) == 3
    assert scope(COUNTS_NOT["why"]) == SCOPE


def test_a_value_that_is_missing_keeps_its_reference() -> None:
    assert settled_text("a {{ x.y }} b", {}) == "a {{ x.y }} b"
