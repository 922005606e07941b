"""One envelope: AES-256-GCM over some bytes, bound to a header that says what they are.

The header's canonical JSON is the additional data, so that no member of it can be changed and no
envelope can stand in another's place. The key is random, or comes from a code by PBKDF2.
"""

from __future__ import annotations

import hashlib
from collections.abc import Callable

from cryptography.exceptions import InvalidTag
from cryptography.hazmat.primitives.ciphers.aead import AESGCM

from basinside.canonical import base64url, canonical_bytes, from_base64url
from basinside.constants import (
    CONTENT_KEY_BYTES,
    IV_BYTES,
    KDF,
    KDF_ROUNDS,
    KDF_ROUNDS_LEAST,
    KDF_ROUNDS_MOST,
    SALT_BYTES,
)
from basinside.model.sealed import Envelope, EnvelopeHeader, Purpose


class SealError(Exception):
    """An envelope does not open; the sentence says why as far as can be known."""


class WrongCodeError(SealError):
    """The code or phrase does not open this envelope."""


class AlteredFileError(SealError):
    """The file is not what was sealed."""


def seal_with_code(
    content: bytes, code: str, header: EnvelopeHeader, random_bytes: Callable[[int], bytes]
) -> Envelope:
    """Return an envelope that the code opens.

    ``code`` is in its written form (``codes.read_phrase``, ``codes.read_opening_code``); the
    header's salt, iv and rounds are filled in here, whatever it held.
    """
    full = EnvelopeHeader.from_plain(
        {
            **header.plain(),
            "kdf": KDF,
            "iterations": KDF_ROUNDS,
            "salt": base64url(random_bytes(SALT_BYTES)),
            "iv": base64url(random_bytes(IV_BYTES)),
        }
    )
    return _sealed(content, _key_from_code(code, full), full)


def seal_with_key(
    content: bytes, key: bytes, header: EnvelopeHeader, random_bytes: Callable[[int], bytes]
) -> Envelope:
    """Return an envelope under a random content key of 32 octets."""
    full = EnvelopeHeader.from_plain({**header.plain(), "iv": base64url(random_bytes(IV_BYTES))})
    return _sealed(content, key, full)


def open_with_code(envelope: Envelope, code: str, purpose: Purpose) -> bytes:
    """Return what a code opens.

    Raises ``WrongCodeError`` when it does not open it (a wrong code and an altered file look
    alike here), and ``AlteredFileError`` when the envelope is for something else or asks for a
    number of rounds that no file of ours has.
    """
    _expect(envelope, purpose)
    if envelope.header.kdf is None:
        raise AlteredFileError("This envelope is not one that a code opens.")
    content = _opened(envelope, _key_from_code(code, envelope.header))
    if content is None:
        raise WrongCodeError(
            "This code does not open it: a word is wrong, or the file was altered."
        )
    return content


def open_with_key(envelope: Envelope, key: bytes, purpose: Purpose) -> bytes:
    """Return what a content key opens; raises ``AlteredFileError`` when it does not."""
    _expect(envelope, purpose)
    content = _opened(envelope, key) if len(key) == CONTENT_KEY_BYTES else None
    if envelope.header.kdf is not None or content is None:
        raise AlteredFileError("The file was altered after it was sealed.")
    return content


def _expect(envelope: Envelope, purpose: Purpose) -> None:
    if envelope.header.purpose != purpose:
        raise AlteredFileError(
            f'This sealed file is for "{envelope.header.purpose}",'
            f' where one for "{purpose}" belongs.'
        )


def _key_from_code(code: str, header: EnvelopeHeader) -> bytes:
    rounds = header.iterations or 0
    if not KDF_ROUNDS_LEAST <= rounds <= KDF_ROUNDS_MOST:
        raise AlteredFileError(
            f"The envelope asks for {rounds} rounds; only {KDF_ROUNDS_LEAST} to {KDF_ROUNDS_MOST} "
            "are taken."
        )
    salt = from_base64url(header.salt or "")
    return hashlib.pbkdf2_hmac("sha256", code.encode("utf-8"), salt, rounds, CONTENT_KEY_BYTES)


def _sealed(content: bytes, key: bytes, header: EnvelopeHeader) -> Envelope:
    bound = canonical_bytes(header.plain())
    ciphertext = AESGCM(key).encrypt(from_base64url(header.iv), content, bound)
    return Envelope(header=header, ciphertext=base64url(ciphertext))


def _opened(envelope: Envelope, key: bytes) -> bytes | None:
    try:
        ciphertext = from_base64url(envelope.ciphertext)
        iv = from_base64url(envelope.header.iv)
        return AESGCM(key).decrypt(iv, ciphertext, canonical_bytes(envelope.header.plain()))
    except (InvalidTag, ValueError):
        return None
