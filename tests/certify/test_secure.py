"""The cryptosuite: against published vectors, against another canonicaliser, against forgers."""

import hashlib
import json
from typing import Any

import pytest
import rfc8785
from cryptography.hazmat.primitives import hashes
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.asymmetric.utils import (
    decode_dss_signature,
    encode_dss_signature,
)
from cryptography.hazmat.primitives.serialization import load_pem_private_key
from hypothesis import given
from hypothesis import strategies as st

from basinside.certify.multikey import base58btc, did_key, from_base58btc, verification_method
from basinside.certify.secure import secure, sign_raw, verify_raw, verify_signature_only
from basinside.model.finding import Verdict
from basinside.render.findings import finding_sentence
from tests.certify.made import OTHER, SUPERVISOR, SUPERVISOR_DID
from tests.reference.published_vectors import Signed, deterministic, nist, wycheproof
from tests.test_canonical import documents

CREATED = "2026-11-20T09:05:00Z"
DOCUMENT: dict[str, Any] = {
    "@context": ["https://www.w3.org/ns/credentials/v2", {"a": "urn:uuid:a"}],
    "id": "urn:uuid:6f0a4c1e-2f6b-4a67-8f0e-0f7d0c9f3b11",
    "a": ["ü", 1, True],
}
ORDER = 0xFFFFFFFF00000000FFFFFFFFFFFFFFFFBCE6FAADA7179E84F3B9CAC2FC632551
"""The order of P-256 (FIPS 186-5 by way of SEC 2, section 2.4.2)."""


def reason(document: dict[str, Any]) -> str:
    found = verify_signature_only(document)
    return "holds" if found.verdict is Verdict.HOLDS else found.data["reason"]


def proof_with(**members: Any) -> dict[str, Any]:
    signed = secure(DOCUMENT, SUPERVISOR, created=CREATED)
    proof = {**_proof(signed), **members}
    return {**signed, "proof": {name: value for name, value in proof.items() if value is not None}}


def _proof(document: dict[str, Any]) -> dict[str, Any]:
    proof = document["proof"]
    assert isinstance(proof, dict)
    return proof


@pytest.mark.parametrize(
    "case", [pytest.param(each, id=each.name) for each in (*nist(), *wycheproof())]
)
def test_published_signatures(case: Signed) -> None:
    public = ec.EllipticCurvePublicNumbers(case.x, case.y, ec.SECP256R1()).public_key()
    assert verify_raw(public, case.signature, case.message) is case.good


def test_the_published_signatures_are_of_both_kinds() -> None:
    assert {case.good for case in nist()} == {True, False}


def test_signing_is_deterministic_as_published() -> None:
    pem, cases = deterministic()
    private = load_pem_private_key(pem, password=None)
    assert isinstance(private, ec.EllipticCurvePrivateKey)
    assert len(cases) == 2
    for message, der in cases:
        r, s = decode_dss_signature(der)
        assert sign_raw(private, message) == r.to_bytes(32, "big") + s.to_bytes(32, "big")


@given(documents, st.booleans())
def test_what_is_signed_holds(value: object, context: bool) -> None:
    document = {"value": value, **({"@context": ["urn:a"]} if context else {})}
    signed = secure(document, SUPERVISOR, created=CREATED)
    assert reason(json.loads(json.dumps(signed))) == "holds"
    assert verify_signature_only(signed).data == {"key": SUPERVISOR_DID}


def test_the_steps_are_those_of_the_suite() -> None:
    """The whole verification again, with another canonicaliser and nothing of ours."""
    signed: Any = secure(DOCUMENT, SUPERVISOR, created=CREATED)
    options: Any = _proof(signed)
    value = options.pop("proofValue")
    del signed["proof"]
    data = (
        hashlib.sha256(rfc8785.dumps(options)).digest()
        + hashlib.sha256(rfc8785.dumps(signed)).digest()
    )
    raw = from_base58btc(value.removeprefix("z"))
    r, s = int.from_bytes(raw[:32], "big"), int.from_bytes(raw[32:], "big")
    SUPERVISOR.public_key().verify(encode_dss_signature(r, s), data, ec.ECDSA(hashes.SHA256()))
    assert options["@context"] == signed["@context"]
    assert options["type"] == "DataIntegrityProof"
    assert options["cryptosuite"] == "ecdsa-jcs-2019"


def test_golden_proof() -> None:
    # Deterministic: the same key, document and moment give this text for ever.
    proof = _proof(secure(DOCUMENT, SUPERVISOR, created=CREATED))
    assert proof["proofValue"] == (
        "z4E3hMavevXvwor6y8oPwJMign459e4qWnxXrRMHnfa9J6HW3nBuVtwMqRemBhzQsxPjb9x1F7e5XiBe9rJAGxGfr"
    )


@pytest.mark.parametrize(
    "altered",
    [
        {"a": ["ü", 1, False]},
        {"a": ["ü", True, True]},
        {"a": [1, "ü", True]},
        {"a": ["u\u0308", 1, True]},
        {"id": "urn:uuid:6f0a4c1e-2f6b-4a67-8f0e-0f7d0c9f3b12"},
        {"added": "member"},
    ],
)
def test_an_altered_document_fails(altered: dict[str, Any]) -> None:
    signed = {**secure(DOCUMENT, SUPERVISOR, created=CREATED), **altered}
    assert reason(signed) == "altered-or-other-key"


def test_the_order_of_keys_does_not_matter() -> None:
    signed = secure(DOCUMENT, SUPERVISOR, created=CREATED)
    assert reason(dict(reversed(signed.items()))) == "holds"


@pytest.mark.parametrize(
    ("members", "expected"),
    [
        ({"created": "2026-11-21T09:05:00Z"}, "altered-or-other-key"),
        ({"expires": "2036-11-21T09:05:00Z"}, "altered-or-other-key"),
        ({"@context": None}, "altered-or-other-key"),
        ({"@context": ["https://example.org/other"]}, "other-context"),
        ({"@context": list(reversed(DOCUMENT["@context"]))}, "other-context"),
        ({"@context": DOCUMENT["@context"][:1]}, "altered-or-other-key"),
        ({"proofPurpose": "authentication"}, "other-purpose"),
        ({"cryptosuite": "ecdsa-rdfc-2019"}, "other-cryptosuite"),
        ({"type": "Other"}, "other-cryptosuite"),
        ({"verificationMethod": None}, "incomplete-proof"),
        ({"verificationMethod": SUPERVISOR_DID}, "not-did-key"),
        (
            {"verificationMethod": verification_method(did_key(OTHER.public_key()))},
            "altered-or-other-key",
        ),
        ({"proofValue": None}, "incomplete-proof"),
        ({"proofValue": "u" + "A" * 86}, "not-base58btc"),
        ({"proofValue": "z" + base58btc(b"\1" * 63)}, "wrong-length"),
        ({"proofValue": "z" + base58btc(b"\1" * 65)}, "wrong-length"),
        ({"proofValue": "z" + base58btc(bytes(64))}, "altered-or-other-key"),
    ],
)
def test_an_altered_proof_fails(members: dict[str, Any], expected: str) -> None:
    assert reason(proof_with(**members)) == expected


def test_a_der_signature_is_refused() -> None:
    raw = from_base58btc(_proof(secure(DOCUMENT, SUPERVISOR, created=CREATED))["proofValue"][1:])
    r, s = int.from_bytes(raw[:32], "big"), int.from_bytes(raw[32:], "big")
    der = encode_dss_signature(r, s)
    assert reason(proof_with(proofValue="z" + base58btc(der))) == "wrong-length"


def test_a_signature_is_64_octets_even_where_fewer_would_mean_the_same() -> None:
    # Half of an s that begins with a zero octet is the same number without it.
    data, whole = next(
        (data, raw)
        for data, raw in ((b"%d" % n, sign_raw(SUPERVISOR, b"%d" % n)) for n in range(4_000))
        if raw[32] == 0
    )
    public = SUPERVISOR.public_key()
    assert verify_raw(public, whole, data)
    assert not verify_raw(public, whole[:32] + whole[33:], data)
    assert not verify_raw(public, whole[:32] + b"\0" + whole[32:], data)


def test_the_second_signature_of_ecdsa_holds_too() -> None:
    # (r, n - s) is as good as (r, s): records are told apart by id and content, never by bytes.
    raw = from_base58btc(_proof(secure(DOCUMENT, SUPERVISOR, created=CREATED))["proofValue"][1:])
    second = raw[:32] + (ORDER - int.from_bytes(raw[32:], "big")).to_bytes(32, "big")
    assert reason(proof_with(proofValue="z" + base58btc(second))) == "holds"


def test_a_document_may_carry_more_contexts_behind_the_signed_ones() -> None:
    # The signed contexts replace the document's before hashing, as the suite says.
    signed = secure(DOCUMENT, SUPERVISOR, created=CREATED)
    signed["@context"] = [*DOCUMENT["@context"], "urn:more"]
    found = verify_signature_only(signed)
    assert found.verdict is Verdict.HOLDS
    assert found.data["reason"] == "more-contexts"
    assert "put in after it was signed" in finding_sentence(found)


def test_contexts_are_compared_as_they_are_signed() -> None:
    # To Python True == 1; a reader of JSON takes them for two things.
    signed = secure({**DOCUMENT, "@context": [1]}, SUPERVISOR, created=CREATED)
    assert reason(signed) == "holds"
    assert reason({**signed, "@context": [True]}) == "other-context"


@pytest.mark.parametrize("proof", [None, "x", 3, [], {}, [1], [{}, {}], {"type": ["a"]}])
def test_a_document_without_such_a_proof_does_not_hold(proof: object) -> None:
    assert reason({**DOCUMENT, "proof": proof}) != "holds"
    assert reason(DOCUMENT) == "no-proof"


def test_one_proof_in_a_list_is_that_proof() -> None:
    signed = secure(DOCUMENT, SUPERVISOR, created=CREATED)
    assert reason({**signed, "proof": [signed["proof"]]}) == "holds"
    assert reason({**signed, "proof": [signed["proof"], signed["proof"]]}) == "several-proofs"


def test_floats_are_never_signed() -> None:
    with pytest.raises(ValueError, match="float"):
        secure({"a": 1.5}, SUPERVISOR, created=CREATED)
    signed = secure(DOCUMENT, SUPERVISOR, created=CREATED)
    assert reason({**signed, "a": 1.5}) == "no-canonical-form"
