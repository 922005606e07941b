"""A private key's file: opened by its phrase, for its purpose, and never chosen by a person."""

import json

import pytest

from basinside.model.key_file import KeyFile
from basinside.seal.codes import CodeError, new_phrase
from basinside.seal.envelope import AlteredFileError, WrongCodeError
from basinside.seal.keys import open_key, seal_key
from tests.seal.counted_bytes import counted_bytes

DID = "did:key:zDnaepBuvsQ8cpsWrVKw8fbpGpvPeNSjVPTWoq6cRqaYzBKVP"
PHRASE = new_phrase(counted_bytes("key"))


@pytest.fixture(scope="module")
def made() -> KeyFile:
    return seal_key(
        b"the private half",
        purpose="supervisor-key",
        did=DID,
        made="2026-11-20",
        phrase=PHRASE,
        random_bytes=counted_bytes(),
        staff_code="S-01",
        demo=True,
    )


def test_the_phrase_opens_it(made: KeyFile) -> None:
    again = KeyFile.from_plain(json.loads(made.text()))
    assert (
        open_key(again, PHRASE.replace(" ", "-").upper(), "supervisor-key") == b"the private half"
    )
    assert "private half" not in made.text()


def test_another_phrase_and_another_purpose_do_not(made: KeyFile) -> None:
    with pytest.raises(WrongCodeError):
        open_key(made, new_phrase(counted_bytes("other")), "supervisor-key")
    with pytest.raises(AlteredFileError, match='"root-key" belongs'):
        open_key(made, PHRASE, "root-key")


def test_a_demo_key_stays_one(made: KeyFile) -> None:
    plain = made.plain()
    del plain["demo"]
    with pytest.raises(AlteredFileError, match="demo"):
        open_key(KeyFile.from_plain(plain), PHRASE, "supervisor-key")


def test_a_phrase_of_ones_own_is_refused() -> None:
    with pytest.raises(CodeError, match='"mittens" is not a word'):
        seal_key(
            b"x",
            purpose="root-key",
            did=DID,
            made="2026-11-20",
            phrase="mittens",
            random_bytes=counted_bytes(),
        )
