"""The record's shape: by a schema of our own making from the standards' tables, and as JSON-LD."""

import base64
import hashlib
import json
from datetime import date
from pathlib import Path
from typing import Any

import jsonschema
import pytest
import rfc8785
from pyld import jsonld

from basinside.certify.evidence import answers_digest, observation_digest
from basinside.certify.record import record_id, unsigned_record
from basinside.constants import CREDENTIALS_CONTEXT, OPEN_BADGES_CONTEXT, RECORD_TERMS
from basinside.model.attempt import Attempt
from basinside.model.machine_file import MachineFileError
from basinside.model.observed import Observation
from basinside.model.record import CompletionRecord
from tests.certify.made import DECISION, decided, signed
from tests.model.test_machine_files import ATTEMPT, OBSERVATION, SELF_TEST, changed

REFERENCE = Path(__file__).parents[1] / "reference"
SCHEMA: dict[str, Any] = json.loads((REFERENCE / "open_badge_shape.schema.json").read_bytes())
CONTEXTS: dict[str, Any] = json.loads((REFERENCE / "context_stubs.json").read_bytes())


def refuse_the_network(address: str, _options: object) -> dict[str, Any]:
    if address not in CONTEXTS:
        raise AssertionError(f"would have fetched {address}")
    return {
        "contextUrl": None,
        "documentUrl": address,
        "document": {"@context": CONTEXTS[address]},
        "contentType": "application/ld+json",
    }


def full() -> dict[str, Any]:
    return signed(
        decided(
            level="beside",
            steps=("bag-mask-silicone-boil/take-apart",),
            override="A founding record.",
        )
    )


@pytest.mark.parametrize("record", [signed(), full(), signed(decided(knowledge=None, limits=()))])
def test_has_the_fields_that_both_standards_ask_for(record: dict[str, Any]) -> None:
    jsonschema.Draft202012Validator(
        SCHEMA, format_checker=jsonschema.Draft202012Validator.FORMAT_CHECKER
    ).validate(record)
    jsonschema.validate(record, CompletionRecord.model_json_schema())


@pytest.mark.parametrize(
    "place",
    [
        "@context",
        "id",
        "type",
        "issuer",
        "validFrom",
        "proof",
        "issuer/id",
        "credentialSubject/type",
        "credentialSubject/identifier",
        "credentialSubject/achievement",
        "credentialSubject/achievement/criteria",
        "credentialSubject/achievement/description",
        "credentialSubject/result/0/resultDescription",
        "credentialSubject/result/1/status",
    ],
)
def test_the_schema_misses_what_is_taken_away(place: str) -> None:
    assert not jsonschema.Draft202012Validator(SCHEMA).is_valid(changed(signed(), place, ...))


def test_no_member_is_lost_as_json_ld() -> None:
    record = full()
    options = {"documentLoader": refuse_the_network}
    expanded = jsonld.expand(record, options)
    again = jsonld.compact(expanded, record["@context"], options)
    assert set(again) == set(record)
    assert set(again["credentialSubject"]) == set(record["credentialSubject"])
    assert again["credentialSubject"]["scope"] == record["credentialSubject"]["scope"]
    for name in ("achievement", "issuer", "proof", "evidence"):
        inner = record["credentialSubject"] if name == "achievement" else record
        other = again["credentialSubject"] if name == "achievement" else again
        assert members(other[name]) == members(inner[name])


def members(value: Any) -> list[set[str]]:
    found = value if isinstance(value, list) else [value]
    return [set(each) - {"@context"} for each in found]


def test_our_own_members_are_terms_of_ours() -> None:
    expanded = json.dumps(jsonld.expand(full(), {"documentLoader": refuse_the_network}))
    terms = full()["@context"][2]
    assert set(terms) == set(RECORD_TERMS)
    for name in RECORD_TERMS:
        urn = terms[name]["@id"] if isinstance(terms[name], dict) else terms[name]
        assert urn.startswith("urn:uuid:")
        assert f'"{urn}"' in expanded
    assert full()["@context"][:2] == [CREDENTIALS_CONTEXT, OPEN_BADGES_CONTEXT]


def test_a_word_that_no_context_knows_would_be_lost() -> None:
    record = {**full(), "unheardOf": "x"}
    expanded = json.dumps(jsonld.expand(record, {"documentLoader": refuse_the_network}))
    assert "unheardOf" not in expanded


def test_no_float_no_null_no_empty_list() -> None:
    def walk(value: object) -> None:
        assert not isinstance(value, float)
        assert value is not None
        assert value not in ([], {}, "")
        if isinstance(value, dict):
            for each in value.values():
                walk(each)
        if isinstance(value, list):
            for each in value:
                walk(each)

    walk(full())
    walk(signed(decided(knowledge=None, practice_seen=0, limits=())))


def test_the_id_follows_from_the_content_alone() -> None:
    record = unsigned_record(DECISION)
    assert record["id"] == record_id(signed()) == record_id(record)
    assert unsigned_record(decided(edition="2026.3"))["id"] != record["id"]


def test_golden_record_id() -> None:
    assert unsigned_record(DECISION)["id"] == "urn:uuid:6de580e9-42e7-57ab-b412-0468b74caacb"


def test_what_makes_no_record() -> None:
    with pytest.raises(ValueError, match="nobody signs for themselves"):
        unsigned_record(decided(signer="L-014"))
    with pytest.raises(ValueError, match="end before it begins"):
        unsigned_record(decided(valid_until=date(2026, 11, 19)))
    with pytest.raises(MachineFileError):
        unsigned_record(decided(evidence=()))


def test_an_answers_digest_is_what_its_description_says() -> None:
    covered = {
        "form_digest": ATTEMPT["form_digest"],
        "staff_code": "L-014",
        "date": "2026-11-20",
        "answers": [{"chosen": [0, 2]}, {"order": [2, 0, 1]}, {"number": "12.5"}, {}],
    }
    hashed = hashlib.sha256(rfc8785.dumps(covered)).digest()
    text = base64.urlsafe_b64encode(hashed).rstrip(b"=").decode()
    assert answers_digest(Attempt.from_plain(ATTEMPT)) == f"answers-v1:{text}"


def test_golden_evidence_digests() -> None:
    assert (
        answers_digest(Attempt.from_plain(ATTEMPT))
        == "answers-v1:6LBxAFBbCHPNx0LjcAf5bOngZgaZMBec7C-yBWBxBG0"
    )
    assert (
        observation_digest(Observation.from_plain(OBSERVATION))
        == "observation-v1:pVvOQbOgUsVbV_8tgxpCW5vw1uhhe6FpAoeUsiwD8D0"
    )


@pytest.mark.parametrize(
    ("place", "value", "same"),
    [
        ("items/0/seconds", 900, True),
        ("items/0/changes", 7, True),
        ("language", "fr", True),
        ("items/0/chosen", [0], False),
        ("items/1/ordered", [0, 1, 2], False),
        ("items/2/number", "12.6", False),
        ("staff_code", "L-015", False),
        ("date", "2026-11-21", False),
        ("form_digest", "form-v1:" + "B" * 43, False),
    ],
)
def test_what_an_answers_digest_covers(place: str, value: object, same: bool) -> None:
    before = answers_digest(Attempt.from_plain(ATTEMPT))
    after = answers_digest(Attempt.from_plain(changed(ATTEMPT, place, value)))
    assert (before == after) is same


def test_a_self_test_is_no_evidence() -> None:
    with pytest.raises(ValueError, match="a self-test is no evidence"):
        answers_digest(Attempt.from_plain(SELF_TEST))


@pytest.mark.parametrize(
    ("place", "value", "same"),
    [
        ("comments", "Well done.", True),
        ("end", "11:00", True),
        ("start", "09:16", False),
        ("setting", "simulated", False),
        ("announced", False, False),
        ("help", True, False),
        ("learner_staff_code", "L-015", False),
        ("observer_staff_code", "S-02", False),
        ("edition", "2026.3", False),
        ("lines/0/verdict", "met with help", False),
        ("lines/0/meaning", "step-v1:" + "B" * 43, False),
    ],
)
def test_what_an_observation_digest_covers(
    place: str,
    value: object,
    same: bool,
) -> None:
    before = observation_digest(Observation.from_plain(OBSERVATION))
    after = observation_digest(Observation.from_plain(changed(OBSERVATION, place, value)))
    assert (before == after) is same
