"""The cryptosuite ecdsa-jcs-2019 on P-256: put a proof on a document, and check one.

W3C Data Integrity ECDSA Cryptosuites 1.0, section 3.3: SHA-256 of the canonical proof options,
then SHA-256 of the canonical document, 64 octets; ECDSA with SHA-256 over those; raw r and s as
base58btc. This is arithmetic alone: whose key it is and whether it counts is for ``examine``.
"""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from typing import Final, cast

from cryptography.exceptions import InvalidSignature
from cryptography.hazmat.primitives import hashes
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.asymmetric.utils import (
    decode_dss_signature,
    encode_dss_signature,
)

from basinside.canonical import canonical_bytes
from basinside.certify.multikey import (
    MultikeyError,
    base58btc,
    did_key,
    from_base58btc,
    public_key_of_method,
    verification_method,
)
from basinside.constants import CRYPTOSUITE, SIGNATURE_BYTES
from basinside.model.finding import Finding, fails, holds, unknown

SIGNATURE: Final = "signature"
"""The code of the finding that this file makes."""

Document = Mapping[str, object]


def secure(
    document: Document, private: ec.EllipticCurvePrivateKey, *, created: str
) -> dict[str, object]:
    """Return the document with a proof; the same key, document and moment give the same bytes.

    ``created`` is an RFC 3339 moment with zone. A proof that the document had is replaced. Raises
    ``ValueError`` when the document has no canonical form.
    """
    bare = {key: value for key, value in document.items() if key != "proof"}
    options: dict[str, object] = {
        "type": "DataIntegrityProof",
        "cryptosuite": CRYPTOSUITE,
        "created": created,
        "verificationMethod": verification_method(did_key(private.public_key())),
        "proofPurpose": "assertionMethod",
    }
    if "@context" in bare:
        options = {"@context": bare["@context"], **options}
    signature = sign_raw(private, _hash_data(options, bare))
    return {**bare, "proof": {**options, "proofValue": "z" + base58btc(signature)}}


def verify_signature_only(document: Document) -> Finding:
    """Return whether the arithmetic of a document's proof is right, and nothing more.

    Works for any document secured with this cryptosuite under a did:key. ``unknown`` when the
    document is secured otherwise; ``fails`` with a ``reason`` in every other case but success.
    """
    proof = document.get("proof")
    if isinstance(proof, list | tuple):
        if len(proof) != 1:
            return unknown(SIGNATURE, reason="several-proofs")
        proof = proof[0]
    if not isinstance(proof, Mapping):
        return fails(SIGNATURE, reason="no-proof")
    if proof.get("type") != "DataIntegrityProof" or proof.get("cryptosuite") != CRYPTOSUITE:
        return unknown(SIGNATURE, reason="other-cryptosuite")
    if proof.get("proofPurpose") != "assertionMethod":
        return fails(SIGNATURE, reason="other-purpose")
    method, value = proof.get("verificationMethod"), proof.get("proofValue")
    if not isinstance(method, str) or not isinstance(value, str):
        return fails(SIGNATURE, reason="incomplete-proof")
    try:
        did, public = public_key_of_method(method)
        signature = _signature(value)
    except MultikeyError as error:
        return fails(SIGNATURE, reason=str(error))
    bare = {key: each for key, each in document.items() if key != "proof"}
    options = {key: each for key, each in proof.items() if key != "proofValue"}
    more = False
    if "@context" in options:
        if not _starts_with(bare.get("@context"), options["@context"]):
            return fails(SIGNATURE, reason="other-context")
        more = len(_as_list(bare.get("@context"))) > len(_as_list(options["@context"]))
        bare["@context"] = options["@context"]
    try:
        data = _hash_data(options, bare)
    except ValueError:
        return fails(SIGNATURE, reason="no-canonical-form")
    if not verify_raw(public, signature, data):
        return fails(SIGNATURE, reason="altered-or-other-key", key=did)
    # The suite lets contexts be put behind the signed ones; that is a change, and it is said.
    return holds(SIGNATURE, key=did, reason="more-contexts") if more else holds(SIGNATURE, key=did)


def sign_raw(private: ec.EllipticCurvePrivateKey, data: bytes) -> bytes:
    """Return the 64 octets of a deterministic ECDSA signature (RFC 6979) with SHA-256."""
    der = private.sign(data, ec.ECDSA(hashes.SHA256(), deterministic_signing=True))
    r, s = decode_dss_signature(der)
    return r.to_bytes(32, "big") + s.to_bytes(32, "big")


def verify_raw(public: ec.EllipticCurvePublicKey, signature: bytes, data: bytes) -> bool:
    """Return whether a raw signature is the key's over the data; any length but 64 is not."""
    if len(signature) != SIGNATURE_BYTES:
        return False
    r, s = (int.from_bytes(half, "big") for half in (signature[:32], signature[32:]))
    try:
        public.verify(encode_dss_signature(r, s), data, ec.ECDSA(hashes.SHA256()))
    except InvalidSignature:
        return False
    return True


def _hash_data(options: Document, bare: Document) -> bytes:
    """Options first, then the document, 64 octets."""
    return (
        hashlib.sha256(canonical_bytes(options)).digest()
        + hashlib.sha256(canonical_bytes(bare)).digest()
    )


def _signature(value: str) -> bytes:
    if not value.startswith("z"):
        raise MultikeyError("not-base58btc")
    signature = from_base58btc(value[1:])
    if len(signature) != SIGNATURE_BYTES:
        raise MultikeyError("wrong-length")
    return signature


def _starts_with(whole: object, start: object) -> bool:
    """Whether one ``@context`` begins with another, in order; a single one is a list of one.

    Compared as they are signed: to Python ``True`` equals ``1``, to a reader of JSON it does not.
    """
    try:
        begins = canonical_bytes(_as_list(whole)[: len(_as_list(start))])
        return begins == canonical_bytes(_as_list(start))
    except ValueError:
        return False


def _as_list(context: object) -> list[object]:
    if isinstance(context, list | tuple):
        return list(cast("list[object]", context))
    return [context]
