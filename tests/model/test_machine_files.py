"""Files that the program writes: strict in what they say, keeping what they do not know."""

import json
from typing import Any

import jsonschema
import pytest

from basinside.model.attempt import Attempt
from basinside.model.key_file import KeyFile
from basinside.model.machine_file import MachineFileError, Part
from basinside.model.observed import Observation
from basinside.model.record import CompletionRecord
from basinside.model.sealed import SealedForm
from basinside.model.trust_list import TrustList

STEP = "step-v1:" + "A" * 43

ATTEMPT: dict[str, Any] = {
    "format": "basinside/attempt/1",
    "handbook": "highfell",
    "edition": "2026.2",
    "kind": "assessment",
    "id": "core",
    "form": "A",
    "form_digest": "form-v1:" + "A" * 43,
    "staff_code": "L-014",
    "date": "2026-11-20",
    "language": "en",
    "items": [
        {"item": "late-part", "chosen": [0, 2], "seconds": 41, "changes": 1},
        {"item": "first-thing", "ordered": [2, 0, 1]},
        {"item": "how-much", "number": "12.5"},
        {"item": "left-out"},
    ],
}
SELF_TEST: dict[str, Any] = {
    **{key: value for key, value in ATTEMPT.items() if key not in {"form", "form_digest"}},
    "kind": "self-test",
    "id": "cleaning",
    "items": [{"item": "late-part", "order": [2, 0, 1], "chosen": [1]}],
}
OBSERVATION: dict[str, Any] = {
    "format": "basinside/observation/1",
    "handbook": "highfell",
    "edition": "2026.2",
    "procedure": "bag-mask-silicone-boil",
    "scope_digest": "scope-v1:" + "A" * 43,
    "instrument": "bag-mask-silicone",
    "route": "boil",
    "learner_staff_code": "L-014",
    "observer_staff_code": "S-01",
    "date": "2026-11-20",
    "start": "09:15",
    "end": "10:05",
    "setting": "real",
    "announced": True,
    "help": False,
    "lines": [
        {"line": "bag-mask-silicone-boil/take-apart", "meaning": STEP, "verdict": "met"},
        {"line": "hands-dry", "meaning": STEP, "verdict": "not met", "why": "Wet hands."},
    ],
}
FILES: list[tuple[type[Part], dict[str, Any]]] = [
    (Attempt, ATTEMPT),
    (Attempt, SELF_TEST),
    (Observation, OBSERVATION),
]
KINDS: list[type[Part]] = [Attempt, Observation, TrustList, KeyFile, SealedForm, CompletionRecord]


def changed(plain: dict[str, Any], place: str, value: object) -> dict[str, Any]:
    copy: dict[str, Any] = json.loads(json.dumps(plain))
    inside: Any = copy
    *way, last = place.split("/")
    for key in way:
        inside = inside[int(key) if isinstance(inside, list) else key]
    if value is ...:
        del inside[last]
    else:
        inside[last] = value
    return copy


@pytest.mark.parametrize(("kind", "plain"), FILES)
def test_goes_there_and_back(kind: type[Part], plain: dict[str, Any]) -> None:
    read = kind.from_plain(plain)
    assert read.plain() == plain
    assert json.loads(read.text()) == plain
    jsonschema.validate(plain, kind.model_json_schema())


@pytest.mark.parametrize(("kind", "plain"), FILES)
def test_keeps_what_it_does_not_know(kind: type[Part], plain: dict[str, Any]) -> None:
    for place in ("later", "items/0/later" if "items" in plain else "lines/0/later"):
        added = changed(plain, place, {"a": [1, "b"]})
        assert kind.from_plain(added).plain() == added


@pytest.mark.parametrize("kind", KINDS)
def test_each_schema_is_one(kind: type[Part]) -> None:
    schema = kind.model_json_schema()
    jsonschema.Draft202012Validator.check_schema(schema)
    assert not jsonschema.Draft202012Validator(schema).is_valid({})


@pytest.mark.parametrize(
    ("kind", "plain", "place", "value", "says"),
    [
        (Attempt, ATTEMPT, "format", "basinside/attempt/2", "format: "),
        (Attempt, ATTEMPT, "date", "2026-13-20", "date: "),
        (Attempt, ATTEMPT, "date", "2026-11-20\n", "date: "),
        (Attempt, ATTEMPT, "staff_code", "Ada", "staff_code: "),
        (Attempt, ATTEMPT, "form", ..., "names its form"),
        (Attempt, ATTEMPT, "form_digest", ..., "names its form"),
        (Attempt, SELF_TEST, "form", "A", "a self-test has no form"),
        (Attempt, ATTEMPT, "items/0/chosen", [2, 0], "rise"),
        (Attempt, ATTEMPT, "items/0/chosen", [0, 0], "rise"),
        (Attempt, ATTEMPT, "items/0/chosen", ["0"], "items.0.chosen.0: "),
        (Attempt, ATTEMPT, "items/0/chosen", [-1], "items.0.chosen.0: "),
        (Attempt, ATTEMPT, "items/0/number", "1", "one answer"),
        (Attempt, ATTEMPT, "items/1/ordered", [0, 2], "each position once"),
        (Attempt, ATTEMPT, "items/2/number", 12.5, "items.2.number: "),
        (Attempt, ATTEMPT, "items/3/item", "late-part", "an item stands twice"),
        (Attempt, ATTEMPT, "items/0/seconds", 1.0, "items.0.seconds: "),
        (Observation, OBSERVATION, "observer_staff_code", "L-014", "nobody observes themselves"),
        (Observation, OBSERVATION, "setting", "online", "setting: "),
        (Observation, OBSERVATION, "announced", "yes", "announced: "),
        (Observation, OBSERVATION, "start", "9:15", "start: "),
        (Observation, OBSERVATION, "lines/1/verdict", "good", "lines.1.verdict: "),
        (Observation, OBSERVATION, "lines/1/meaning", "form-v1:" + "A" * 43, "lines.1.meaning: "),
        (Observation, OBSERVATION, "lines", [], "lines: "),
        (
            Observation,
            OBSERVATION,
            "second_observer",
            {"observer_staff_code": "S-01", "lines": []},
            "somebody else",
        ),
    ],
)
def test_refuses_and_says_where(
    kind: type[Part], plain: dict[str, Any], place: str, value: object, says: str
) -> None:
    with pytest.raises(MachineFileError) as refused:
        kind.from_plain(changed(plain, place, value))
    assert any(says in line for line in refused.value.lines)


@pytest.mark.parametrize("value", [None, [], "a", 1, {"a": {1, 2}}, object()])
def test_no_value_gives_another_exception(value: object) -> None:
    for kind in KINDS:
        with pytest.raises(MachineFileError):
            kind.from_plain(value)


def test_nothing_changes_once_read() -> None:
    attempt = Attempt.from_plain(ATTEMPT)
    with pytest.raises(ValueError, match="frozen"):
        attempt.date = "2026-11-21"
