"""Examining: every way a record can be less than it seems, and no word more than can be known."""

import copy
import functools
import json
import operator
from datetime import date
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from basinside.certify.examine import NEVER_KNOWN, Examination, Standing, examine
from basinside.certify.multikey import did_key
from basinside.certify.record import first_moment, record_id
from basinside.certify.secure import secure
from basinside.certify.trust import (
    add_signer,
    lose,
    new_trust_list,
    retire,
    sign_trust_list,
)
from basinside.model.finding import Verdict
from basinside.seal.codes import root_fingerprint
from tests.certify.made import (
    DECISION,
    ON,
    OTHER,
    ROOT,
    ROOT_WORDS,
    SUPERVISOR,
    SUPERVISOR_DID,
    decided,
    key,
    listed,
    signed,
    trusted,
)
from tests.test_canonical import documents

OTHER_DID = did_key(OTHER.public_key())


def seen(
    record: dict[str, Any] | None = None,
    *,
    trust: object = ...,
    root_words: str | None = ROOT_WORDS,
    on: date | None = ON,
    evidence: tuple[str, ...] = (),
) -> Examination:
    return examine(
        signed() if record is None else record,
        trust=trusted() if trust is ... else trust,
        root_words=root_words,
        fingerprint=root_fingerprint,
        on=on,
        evidence=evidence,
    )


def failing(found: Examination) -> dict[str, str]:
    return {
        each.code: each.data.get("reason", "")
        for each in found.findings
        if each.verdict is Verdict.FAILS
    }


def verdict(found: Examination, code: str) -> Verdict:
    return next(each.verdict for each in found.findings if each.code == code)


def resigned(
    changes: dict[str, Any], private: Any = SUPERVISOR, *, new_id: bool = True
) -> dict[str, Any]:
    """A record that its signer made out otherwise than our program would."""
    bare: dict[str, Any] = {
        name: value for name, value in {**signed(), **changes}.items() if name != "proof"
    }
    if new_id:
        bare["id"] = record_id(bare)
    return secure(bare, private, created=first_moment(ON))


def test_a_good_record_is_confirmed_and_its_findings_stand_in_order() -> None:
    found = seen()
    assert found.standing is Standing.CONFIRMED
    assert found.signer == "S-01"
    assert failing(found) == {}
    assert [each.code for each in found.findings] == [
        "signature",
        "shape",
        "id-follows-content",
        "issuer-holds-key",
        "trust-list-signature",
        "root-fingerprint",
        "key-listed",
        "signer",
        "key-in-use",
        "in-date",
        "evidence",
        "evidence",
        *NEVER_KNOWN,
    ]


def test_what_no_file_can_show_is_always_said() -> None:
    for found in (seen(), seen({}), seen(trust=None), seen(signed(private=OTHER))):
        unknown = [each.code for each in found.findings if each.verdict is Verdict.UNKNOWN]
        assert unknown[-len(NEVER_KNOWN) :] == list(NEVER_KNOWN)


def test_without_the_fingerprint_it_is_the_folder_that_says_so() -> None:
    found = seen(root_words=None)
    assert found.standing is Standing.ACCORDING_TO_FOLDER
    assert verdict(found, "root-fingerprint") is Verdict.UNKNOWN


def test_without_a_trust_list_the_signer_is_not_known() -> None:
    found = seen(trust=None, root_words=None)
    assert found.standing is Standing.UNKNOWN_SIGNER
    assert found.signer is None
    assert verdict(found, "key-listed") is Verdict.UNKNOWN


def test_a_forger_with_a_whole_folder_of_their_own_is_found_by_the_fingerprint() -> None:
    """Record, trust list and root key all forged alike: only the paper knows better."""
    root = key(2_001)
    trust = new_trust_list(handbook="highfell", root=root.public_key(), issued="2026-10-01")
    trust = add_signer(trust, OTHER_DID, staff_code="S-01", role="supervisor", from_="2026-10-01")
    forged_list = sign_trust_list(trust, root, issued="2026-11-01").plain()
    forged = signed(decided(signer_did=OTHER_DID), OTHER)
    assert seen(forged, trust=forged_list, root_words=None).standing is (
        Standing.ACCORDING_TO_FOLDER
    )
    found = seen(forged, trust=forged_list)
    assert found.standing is Standing.FAILS
    assert "root-fingerprint" in failing(found)
    assert found.signer is None
    assert verdict(found, "key-listed") is Verdict.UNKNOWN


def test_a_forger_who_only_alters_the_list_is_found_without_it() -> None:
    forged_list = trusted()
    forged_list["signers"][0]["did"] = OTHER_DID
    forged = signed(decided(signer_did=OTHER_DID), OTHER)
    found = seen(forged, trust=forged_list, root_words=None)
    assert failing(found) == {"trust-list-signature": "altered-or-other-key"}
    assert found.standing is Standing.FAILS


def test_a_key_of_ones_own_is_not_listed() -> None:
    found = seen(signed(decided(signer_did=OTHER_DID), OTHER))
    assert verdict(found, "signature") is Verdict.HOLDS
    assert set(failing(found)) == {"key-listed"}
    assert found.standing is Standing.FAILS


def test_a_list_speaks_for_its_own_handbook_only() -> None:
    assert failing(seen(signed(decided(handbook="lowfell")))) == {"key-listed": "other-handbook"}


def test_signed_with_another_key_than_the_issuers() -> None:
    found = seen(signed(private=OTHER))
    assert set(failing(found)) == {"issuer-holds-key", "key-listed"}


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("validUntil", "2036-11-20T23:59:59Z"),
        ("validFrom", "2026-01-01T00:00:00Z"),
        ("name", "Everything"),
        ("id", "urn:uuid:6f0a4c1e-2f6b-4a67-8f0e-0f7d0c9f3b11"),
    ],
)
def test_an_altered_record_fails(name: str, value: str) -> None:
    found = seen({**signed(), name: value})
    assert failing(found)["signature"] == "altered-or-other-key"
    assert found.standing is Standing.FAILS


def test_an_altered_person_fails() -> None:
    record = signed()
    record["credentialSubject"]["identifier"][0]["identityHash"] = "L-015"
    assert failing(seen(record))["signature"] == "altered-or-other-key"


@pytest.mark.parametrize(
    ("changes", "reason"),
    [
        ({"@context": ["https://www.w3.org/ns/credentials/v2"]}, "other-context"),
        ({"@context": [*signed()["@context"], "https://example.org/x"]}, "other-context"),
        ({"type": ["VerifiableCredential"]}, "not-a-record"),
        ({"type": ["VerifiableCredential", "OpenBadgeCredential", "Other"]}, "not-a-record"),
        ({"validUntil": "2026-11-19T23:59:59Z"}, "days-run-backwards"),
        ({"validUntil": "2027-02-31T23:59:59Z"}, "no-such-day"),
        ({"validUntil": "2027-11-20"}, "not-a-record"),
        ({"validUntil": "2027-11-20T23:59:59"}, "not-a-record"),
        ({"evidence": []}, "not-a-record"),
        ({"issuer": SUPERVISOR_DID}, "not-a-record"),
        ({"credentialStatus": {"id": "urn:x"}}, "unknown-member"),
    ],
)
def test_a_listed_signer_cannot_sign_another_shape(changes: dict[str, Any], reason: str) -> None:
    found = seen(resigned(changes))
    assert verdict(found, "signature") is Verdict.HOLDS
    assert failing(found) == {"shape": reason}
    assert found.standing is Standing.FAILS


def test_a_member_that_no_context_knows_is_refused_at_any_depth() -> None:
    subject = signed()["credentialSubject"]
    subject["achievement"]["alsoMay"] = "everything"
    found = seen(resigned({"credentialSubject": subject}))
    shape = next(each for each in found.findings if each.code == "shape")
    assert shape.data["detail"] == "credentialSubject.achievement.alsoMay"


@pytest.mark.parametrize(
    ("path", "alias"),
    [
        ((), "valid_from"),
        ((), "context"),
        (("credentialSubject", "identifier", 0), "identity_hash"),
        (("credentialSubject", "achievement"), "achievement_type"),
        (("evidence", 0), "evidence_digest"),
    ],
)
def test_a_member_has_one_name_only(path: tuple[str | int, ...], alias: str) -> None:
    """A second name beside the true one is a stranger, and instead of it stands for nothing."""
    words = alias.split("_")
    name = "@context" if alias == "context" else words[0] + words[1].title()
    for taken in (False, True):
        plain = copy.deepcopy(signed())
        part: Any = plain
        for member in path:
            part = part[member]
        part[alias] = part.pop(name) if taken else part[name]
        bare = {key: value for key, value in plain.items() if key != "proof"}
        bare["id"] = record_id(bare)
        found = seen(secure(bare, SUPERVISOR, created=first_moment(ON)))
        assert verdict(found, "signature") is Verdict.HOLDS
        assert "shape" in failing(found), (alias, taken)
        assert found.standing is Standing.FAILS


def test_an_id_that_does_not_follow_from_the_content() -> None:
    other = {"id": "urn:uuid:6f0a4c1e-2f6b-5a67-8f0e-0f7d0c9f3b11"}
    assert set(failing(seen(resigned(other, new_id=False)))) == {"id-follows-content"}


def test_a_signer_under_another_name_or_for_themselves() -> None:
    assert failing(seen(signed(decided(signer="S-02")))) == {"signer": "other-name"}
    subject = signed()["credentialSubject"]
    subject["identifier"][0]["identityHash"] = "S-01"
    own = resigned({"credentialSubject": subject})
    assert failing(seen(own)) == {"signer": "signed-for-self"}


def test_a_retired_key_keeps_what_it_signed_before() -> None:
    kept = trusted(retire(listed(), "S-01", on="2026-11-20"))
    assert seen(trust=kept).standing is Standing.CONFIRMED
    ended = trusted(retire(listed(), "S-01", on="2026-11-19"))
    assert failing(seen(trust=ended)) == {"key-in-use": "retired"}


def test_a_proof_made_after_retirement_counts_from_its_own_moment() -> None:
    ended = trusted(retire(listed(), "S-01", on="2026-11-25"))
    bare = {name: value for name, value in signed().items() if name != "proof"}
    late = secure(bare, SUPERVISOR, created="2026-12-01T08:00:00Z")
    assert failing(seen(late, trust=ended)) == {"key-in-use": "retired"}


def test_a_lost_key_cannot_be_relied_on_whenever_it_signed() -> None:
    for on in ("2026-10-02", "2027-11-19"):
        found = seen(trust=trusted(lose(listed(), "S-01", on=on)))
        assert failing(found) == {"key-in-use": "lost"}
        assert found.standing is Standing.FAILS


def test_a_key_that_did_not_count_yet() -> None:
    early = decided(valid_from=date(2026, 9, 30))
    assert failing(seen(signed(early))) == {"key-in-use": "not-yet"}


@pytest.mark.parametrize(
    ("on", "reason"),
    [
        (date(2026, 11, 19), "not-yet"),
        (date(2026, 11, 20), None),
        (date(2027, 11, 20), None),
        (date(2027, 11, 21), "ended"),
    ],
)
def test_in_date_from_the_first_day_to_the_last(on: date, reason: str | None) -> None:
    assert failing(seen(on=on)).get("in-date") == reason


def test_without_a_day_it_is_not_known_whether_it_is_in_date() -> None:
    found = seen(on=None)
    assert verdict(found, "in-date") is Verdict.UNKNOWN
    assert found.standing is Standing.CONFIRMED


def test_evidence_at_hand_is_compared() -> None:
    first, second = (each.digest for each in DECISION.evidence)
    found = seen(evidence=(first,))
    said = [
        (each.verdict, each.data["digest"]) for each in found.findings if each.code == "evidence"
    ]
    assert said == [(Verdict.HOLDS, first), (Verdict.UNKNOWN, second)]
    strange = seen(evidence=("answers-v1:" + "Z" * 43,))
    assert failing(strange) == {"evidence": "not-of-this-record"}


def test_a_demonstration_key_proves_nothing() -> None:
    found = seen(trust=trusted(listed(demo=True)))
    assert verdict(found, "demonstration-key") is Verdict.UNKNOWN
    assert found.standing is Standing.DEMONSTRATION
    root_is_demo = new_trust_list(
        handbook="highfell", root=ROOT.public_key(), issued="2026-10-01", demo=True
    )
    root_is_demo = add_signer(
        root_is_demo, SUPERVISOR_DID, staff_code="S-01", role="x", from_="2026-10-01"
    )
    assert seen(trust=trusted(root_is_demo)).standing is Standing.DEMONSTRATION


@pytest.mark.parametrize("created", ["2026-02-31T00:00:00Z", "0001-01-01T00:00:00+14:00", "x", 3])
def test_a_proof_of_a_day_that_never_was(created: object) -> None:
    proof = {**signed()["proof"], "created": created}
    assert "shape" in failing(seen({**signed(), "proof": proof}))


@given(documents, st.sampled_from(sorted(signed())), documents)
def test_nothing_that_a_file_holds_gives_an_exception(
    value: object, name: str, trust: object
) -> None:
    assert seen({**signed(), name: value}, trust=trust).standing in set(Standing)
    proof = {**signed()["proof"], "created": value, "proofValue": value}
    found = seen({**signed(), "proof": proof}, root_words=None)
    assert found.standing is Standing.FAILS


@given(st.data())
def test_one_changed_place_is_never_confirmed(data: st.DataObject) -> None:
    record = json.loads(json.dumps(signed()))
    inside: Any = record
    while isinstance(inside, dict | list) and inside:
        keys = sorted(inside) if isinstance(inside, dict) else list(range(len(inside)))
        at = data.draw(st.sampled_from(keys))
        if not isinstance(inside[at], dict | list):
            old = inside[at]
            inside[at] = data.draw(documents.filter(functools.partial(operator.ne, old)))
            break
        inside = inside[at]
    assert seen(record).standing is not Standing.CONFIRMED
