"""Public keys as text: base58btc multikeys, did:key, and the JWK that older browsers take."""

from __future__ import annotations

from typing import Final

from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.serialization import Encoding, PublicFormat

from basinside.canonical import base64url
from basinside.constants import P256_MULTIKEY_PREFIX
from basinside.model.trust_list import Jwk, PublicKey

BASE58: Final = "123456789ABCDEFGHJKLMNPQRSTUVWXYZabcdefghijkmnopqrstuvwxyz"
"""The letters of base58btc (draft-msporny-base58-03, table 1)."""
LONGEST: Final = 200
"""Letters that are decoded at all; a key has 49, a signature at most 89 (our own cap)."""
POINT_BYTES: Final = 33
"""Octets of a compressed P-256 point (SEC 1, section 2.3.3)."""


class MultikeyError(ValueError):
    """A text that is not the public name of a P-256 key; the message is one or two words."""


def base58btc(data: bytes) -> str:
    """Return bytes as base58btc text, each leading zero octet as ``1``."""
    number = int.from_bytes(data, "big")
    letters = ""
    while number:
        number, rest = divmod(number, 58)
        letters = BASE58[rest] + letters
    return "1" * (len(data) - len(data.lstrip(b"\0"))) + letters


def from_base58btc(text: str) -> bytes:
    """Return the bytes of base58btc text; raises ``MultikeyError`` for other letters."""
    if len(text) > LONGEST:
        raise MultikeyError("too-long")
    number = 0
    for letter in text:
        value = BASE58.find(letter)
        if value < 0:
            raise MultikeyError("not-base58btc")
        number = number * 58 + value
    zeros = len(text) - len(text.lstrip("1"))
    return b"\0" * zeros + number.to_bytes((number.bit_length() + 7) // 8, "big")


def did_key(public: ec.EllipticCurvePublicKey) -> str:
    """Return ``did:key:zDn...`` for a P-256 public key."""
    point = public.public_bytes(Encoding.X962, PublicFormat.CompressedPoint)
    return "did:key:z" + base58btc(P256_MULTIKEY_PREFIX + point)


def verification_method(did: str) -> str:
    """Return the did:key URL of the one key that a did:key names."""
    return f"{did}#{did.removeprefix('did:key:')}"


def public_key(did: str) -> ec.EllipticCurvePublicKey:
    """Return the key that a did:key names.

    Raises ``MultikeyError`` for any other prefix or length, for a point that is not on the curve,
    and for a second spelling of a key.
    """
    text = did.removeprefix("did:key:")
    if text == did or not text.startswith("z"):
        raise MultikeyError("not-did-key")
    data = from_base58btc(text[1:])
    point = data.removeprefix(P256_MULTIKEY_PREFIX)
    if point == data or len(point) != POINT_BYTES or point[0] not in {2, 3}:
        raise MultikeyError("not-p256")
    try:
        public = ec.EllipticCurvePublicKey.from_encoded_point(ec.SECP256R1(), point)
    except ValueError:
        raise MultikeyError("not-on-curve") from None
    if did_key(public) != did:
        raise MultikeyError("other-spelling")
    return public


def public_key_of_method(method: str) -> tuple[str, ec.EllipticCurvePublicKey]:
    """Return the did:key and the key of a verification method ``did:key:X#X``.

    Raises ``MultikeyError`` for any other form.
    """
    did, _, fragment = method.partition("#")
    public = public_key(did)
    if fragment != did.removeprefix("did:key:"):
        raise MultikeyError("not-did-key")
    return did, public


def both_forms(public: ec.EllipticCurvePublicKey) -> PublicKey:
    """Return a public key as the trust list writes it: did:key and JWK."""
    numbers = public.public_numbers()
    jwk = Jwk(
        x=base64url(numbers.x.to_bytes(32, "big")), y=base64url(numbers.y.to_bytes(32, "big"))
    )
    return PublicKey(did=did_key(public), jwk=jwk)
