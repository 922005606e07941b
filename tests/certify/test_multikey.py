"""Public keys as text: one spelling each, and nothing but P-256."""

import base64
import json

import pytest
from cryptography.hazmat.primitives.asymmetric import ec, ed25519
from cryptography.hazmat.primitives.serialization import Encoding, PublicFormat
from hypothesis import given
from hypothesis import strategies as st

from basinside.certify.keys import KeyContentError, new_private_key, private_key, private_key_bytes
from basinside.certify.multikey import (
    MultikeyError,
    base58btc,
    both_forms,
    did_key,
    from_base58btc,
    public_key,
    public_key_of_method,
    verification_method,
)
from basinside.model.trust_list import PublicKey
from tests.certify.made import key


@pytest.mark.parametrize(
    ("data", "text"),
    [  # draft-msporny-base58-03, section 5
        (b"Hello World!", "2NEpo7TZRRrLZSi2U"),
        (
            b"The quick brown fox jumps over the lazy dog.",
            "USm3fpXnKG5EUBx2ndxBDMPVciP5hGey2Jh4NDv6gmeo1LkMeiKrLJUUBk6Z",
        ),
        (bytes.fromhex("0000287fb4cd"), "11233QC4"),
        (b"", ""),
    ],
)
def test_published_base58(data: bytes, text: str) -> None:
    assert base58btc(data) == text
    assert from_base58btc(text) == data


@given(st.binary(max_size=100))
def test_base58_goes_there_and_back(data: bytes) -> None:
    assert from_base58btc(base58btc(data)) == data


@pytest.mark.parametrize("text", ["0", "O", "I", "l", " ", "ä", "1" * 201])
def test_other_letters_are_refused(text: str) -> None:
    with pytest.raises(MultikeyError):
        from_base58btc(text)


@given(st.integers(min_value=1, max_value=2**250))
def test_a_key_goes_there_and_back(secret: int) -> None:
    public = key(secret).public_key()
    did = did_key(public)
    assert did.startswith("did:key:zDn")
    assert public_key(did) == public
    assert public_key_of_method(verification_method(did)) == (did, public)
    assert PublicKey.from_plain(json.loads(json.dumps(both_forms(public).plain()))).did == did


def named(data: bytes) -> str:
    return "did:key:z" + base58btc(data)


POINT = key(5).public_key().public_bytes(Encoding.X962, PublicFormat.CompressedPoint)
WHOLE = key(5).public_key().public_bytes(Encoding.X962, PublicFormat.UncompressedPoint)
ED25519 = (
    ed25519.Ed25519PrivateKey.from_private_bytes(bytes(32))
    .public_key()
    .public_bytes(Encoding.Raw, PublicFormat.Raw)
)


@pytest.mark.parametrize(
    ("did", "reason"),
    [
        (named(b"\x81\x24" + POINT), "not-p256"),
        (named(b"\xed\x01" + ED25519), "not-p256"),
        (named(b"\x80\x24" + POINT[:-1]), "not-p256"),
        (named(b"\x80\x24" + POINT + b"\0"), "not-p256"),
        (named(b"\x80\x24" + WHOLE), "not-p256"),
        (named(b"\x80\x24\x04" + POINT[1:]), "not-p256"),
        (named(b"\x80\x24\x02" + b"\xff" * 32), "not-on-curve"),
        ("did:key:u" + base58btc(b"\x80\x24" + POINT), "not-did-key"),
        ("did:web:example.org", "not-did-key"),
        ("z" + base58btc(b"\x80\x24" + POINT), "not-did-key"),
        ("", "not-did-key"),
        ("did:key:z0", "not-base58btc"),
    ],
)
def test_what_is_no_p256_key_is_refused(did: str, reason: str) -> None:
    with pytest.raises(MultikeyError) as refused:
        public_key(did)
    assert str(refused.value) == reason


@pytest.mark.parametrize("fragment", ["", "#", "#other", "#z" + "1" * 20])
def test_a_method_names_its_own_key(fragment: str) -> None:
    with pytest.raises(MultikeyError):
        public_key_of_method(did_key(key(5).public_key()) + fragment)


def test_the_jwk_is_the_same_point() -> None:
    numbers = key(7).public_key().public_numbers()
    jwk = both_forms(key(7).public_key()).jwk
    assert jwk.plain().keys() == {"kty", "crv", "x", "y"}
    from_jwk = [int.from_bytes(_unpadded(text), "big") for text in (jwk.x, jwk.y)]
    assert from_jwk == [numbers.x, numbers.y]


def _unpadded(text: str) -> bytes:
    return base64.urlsafe_b64decode(text + "=")


def test_a_private_key_is_read_back_as_the_one_it_is() -> None:
    private = new_private_key()
    did = did_key(private.public_key())
    assert private_key(private_key_bytes(private), did).private_numbers() == (
        private.private_numbers()
    )
    with pytest.raises(KeyContentError, match="another key"):
        private_key(private_key_bytes(key(5)), did)
    with pytest.raises(KeyContentError, match="another kind"):
        private_key(private_key_bytes(ec.derive_private_key(5, ec.SECP384R1())), did)
    with pytest.raises(KeyContentError, match="does not hold a private key"):
        private_key(b"nonsense", did)
