"""Envelopes: opened by what sealed them and by nothing else, and by another program's hands too."""

import base64
import hashlib
import json

import pytest
import rfc8785
from cryptography.hazmat.primitives.ciphers.aead import AESGCM
from hypothesis import given
from hypothesis import strategies as st

from basinside.model.machine_file import MachineFileError
from basinside.model.sealed import Envelope, EnvelopeHeader
from basinside.seal.envelope import (
    AlteredFileError,
    WrongCodeError,
    open_with_code,
    open_with_key,
    seal_with_code,
    seal_with_key,
)
from tests.seal.counted_bytes import counted_bytes

KEY = bytes(range(32))
HEADER = EnvelopeHeader(
    format="basinside/sealed/1",
    purpose="form",
    handbook="highfell",
    assessment="core",
    version=1,
    form="A",
    iv="A" * 16,
)
WRAP = EnvelopeHeader.from_plain({**HEADER.plain(), "purpose": "open-form"})


def unpadded(text: str) -> bytes:
    return base64.urlsafe_b64decode(text + "=" * (-len(text) % 4))


@pytest.fixture(scope="module")
def wrapped() -> Envelope:
    return seal_with_code(b"a key", "K7M2PXHRA", WRAP, counted_bytes())


@given(st.binary(max_size=500), st.binary(min_size=32, max_size=32))
def test_a_content_key_opens_what_it_sealed(content: bytes, key: bytes) -> None:
    envelope = seal_with_key(content, key, HEADER, counted_bytes())
    assert open_with_key(envelope, key, "form") == content


def test_the_envelope_is_what_its_description_says(wrapped: Envelope) -> None:
    """Opened here with nothing of ours, so that a page's script can do it from the text alone."""
    file = json.loads(json.dumps(wrapped.plain()))
    header = file["header"]
    assert header["kdf"] == "PBKDF2-SHA-256"
    assert header["iterations"] == 600_000
    assert len(unpadded(header["salt"])) == 16
    assert len(unpadded(header["iv"])) == 12
    key = hashlib.pbkdf2_hmac("sha256", b"K7M2PXHRA", unpadded(header["salt"]), 600_000, 32)
    opened = AESGCM(key).decrypt(
        unpadded(header["iv"]), unpadded(file["ciphertext"]), rfc8785.dumps(header)
    )
    assert opened == b"a key"


def test_a_content_key_envelope_has_no_members_of_a_code() -> None:
    plain = seal_with_key(b"x", KEY, HEADER, counted_bytes()).header.plain()
    assert not {"kdf", "iterations", "salt"} & set(plain)


def test_two_envelopes_never_share_iv_or_salt() -> None:
    draw = counted_bytes()
    first, second = (seal_with_code(b"x", "K7M2PXHRA", WRAP, draw) for _ in range(2))
    assert first.header.iv != second.header.iv
    assert first.header.salt != second.header.salt


def test_another_code_does_not_open_it(wrapped: Envelope) -> None:
    with pytest.raises(WrongCodeError, match="does not open it"):
        open_with_code(wrapped, "K7M2PXHRB", "open-form")


@pytest.mark.parametrize(
    ("member", "value"),
    [
        ("handbook", "lowfell"),
        ("assessment", "other"),
        ("version", 2),
        ("form", "B"),
        ("demo", True),
        ("added", "by a stranger"),
    ],
)
def test_no_member_of_the_header_can_be_changed(member: str, value: object) -> None:
    sealed = seal_with_key(b"x", KEY, HEADER, counted_bytes()).plain()
    header = sealed["header"]
    assert isinstance(header, dict)
    altered = Envelope.from_plain({**sealed, "header": {**header, member: value}})
    with pytest.raises(AlteredFileError, match="altered after it was sealed"):
        open_with_key(altered, KEY, "form")


@given(st.integers(min_value=0), st.integers(min_value=1, max_value=255))
def test_no_octet_of_the_ciphertext_can_be_changed(at: int, by: int) -> None:
    sealed = seal_with_key(b"some content", KEY, HEADER, counted_bytes())
    data = bytearray(unpadded(sealed.ciphertext))
    data[at % len(data)] ^= by
    text = base64.urlsafe_b64encode(data).rstrip(b"=").decode()
    altered = Envelope(header=sealed.header, ciphertext=text)
    with pytest.raises(AlteredFileError):
        open_with_key(altered, KEY, "form")


def test_an_envelope_does_not_open_in_anothers_place(wrapped: Envelope) -> None:
    with pytest.raises(AlteredFileError, match='is for "open-form", where one for "mark-keys"'):
        open_with_code(wrapped, "K7M2PXHRA", "mark-keys")


def test_a_code_is_no_content_key_and_the_other_way_round(wrapped: Envelope) -> None:
    with pytest.raises(AlteredFileError):
        open_with_key(wrapped, KEY, "open-form")
    with pytest.raises(AlteredFileError, match="not one that a code opens"):
        open_with_code(seal_with_key(b"x", KEY, HEADER, counted_bytes()), "K7M2PXHRA", "form")


@pytest.mark.parametrize("rounds", [1, 599_999, 5_000_001, 10**15, -1, 0])
def test_rounds_out_of_bounds_are_refused_unworked(wrapped: Envelope, rounds: int) -> None:
    header = EnvelopeHeader.from_plain({**wrapped.header.plain(), "iterations": rounds})
    with pytest.raises(AlteredFileError, match=f"asks for {rounds} rounds"):
        open_with_code(
            Envelope(header=header, ciphertext=wrapped.ciphertext), "K7M2PXHRA", "open-form"
        )


@pytest.mark.parametrize(
    ("member", "value"),
    [
        ("salt", None),
        ("iterations", None),
        ("kdf", "scrypt"),
        ("iv", "AAAA"),
        ("purpose", "anything"),
        ("iterations", "600000"),
        ("demo", False),
    ],
)
def test_a_header_of_another_shape_is_refused(
    wrapped: Envelope, member: str, value: object
) -> None:
    plain = wrapped.header.plain()
    with pytest.raises(MachineFileError):
        EnvelopeHeader.from_plain({**plain, member: value})
