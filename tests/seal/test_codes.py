"""Codes: drawn evenly, read however they are typed, refused with the part that is wrong."""

import hashlib
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from basinside.constants import SLIP_ALPHABET
from basinside.seal.codes import (
    CodeError,
    new_opening_code,
    new_phrase,
    read_opening_code,
    read_phrase,
    root_fingerprint,
    word_list,
)


def test_the_list_has_2048_words_told_apart_by_four_letters() -> None:
    words = word_list()
    assert len(words) == 2_048
    assert len({word[:4] for word in words}) == 2_048
    assert list(words) == sorted(words)
    assert all(re.fullmatch(r"[a-z]{4,8}", word) for word in words)


def test_the_list_is_not_changed() -> None:
    # Fingerprints on paper and phrases in drawers stand on it: this line is never edited.
    text = "\n".join(word_list())
    assert (
        hashlib.sha256(text.encode()).hexdigest()
        == "a683d1ff17e24c202b482f6c87aad1efed4bfd70748d54ec416d2edeee5ae020"
    )


def test_the_alphabet_has_32_symbols_that_are_not_confused() -> None:
    assert len(set(SLIP_ALPHABET)) == len(SLIP_ALPHABET) == 32
    assert not set("01IO") & set(SLIP_ALPHABET)


@given(st.binary(min_size=9, max_size=9))
def test_a_phrase_carries_the_first_66_bits(data: bytes) -> None:
    phrase = new_phrase(lambda count: data[:count])
    number = 0
    for word in phrase.split(" "):
        number = number * 2_048 + word_list().index(word)
    assert number == int.from_bytes(data, "big") >> 6


@given(st.binary(min_size=6, max_size=6))
def test_an_opening_code_carries_the_first_45_bits(data: bytes) -> None:
    code = new_opening_code(lambda count: data[:count])
    assert re.fullmatch(r"[2-9A-HJ-NP-Z]{3}(-[2-9A-HJ-NP-Z]{3}){2}", code)
    number = 0
    for symbol in read_opening_code(code):
        number = number * 32 + SLIP_ALPHABET.index(symbol)
    assert number == int.from_bytes(data, "big") >> 3


@given(st.binary(min_size=9, max_size=9), st.sampled_from([" ", "-", ", ", "\n", "  ", "."]))
def test_a_phrase_is_read_however_it_is_typed(data: bytes, between: str) -> None:
    phrase = new_phrase(lambda count: data[:count])
    words = phrase.split(" ")
    assert read_phrase(between.join(words)) == phrase
    assert read_phrase(f"  {between.join(word[:4].upper() for word in words)} ") == phrase


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ("ability about above abroad absorb", "6 words; this one has 5"),
        ("", "this one has 0"),
        ("ability about above abroad absorb xylophone", '"xylophone" is not a word'),
        ("ability about above abroad absorb abilitz", '"abilitz" is not a word'),
        ("ability about above abroad absorb abi", '"abi" is not a word'),
    ],
)
def test_a_wrong_phrase_is_refused_by_its_part(typed: str, says: str) -> None:
    with pytest.raises(CodeError, match=says):
        read_phrase(typed)


@pytest.mark.parametrize("typed", ["k7m-2px-hra", "K7M2PXHRA", " k7m 2px hra ", "K7M–2PX–HRA"])
def test_an_opening_code_is_read_however_it_is_typed(typed: str) -> None:
    assert read_opening_code(typed) == "K7M2PXHRA"


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ("K7M-2PX-HRO", '"O" is in no opening code. Codes have no 0, O, 1 or I.'),
        ("K7M-2PX-HR", "has 9 symbols; this one has 8"),
        ("K7M-2PX-HR!", '"!" is in no opening code.$'),
    ],
)
def test_a_wrong_opening_code_is_refused_by_its_part(typed: str, says: str) -> None:
    with pytest.raises(CodeError, match=says):
        read_opening_code(typed)


def test_a_fingerprint_is_the_first_66_bits_of_the_hash_of_the_text() -> None:
    did = "did:key:zDnaepBuvsQ8cpsWrVKw8fbpGpvPeNSjVPTWoq6cRqaYzBKVP"
    bits = f"{int(hashlib.sha256(did.encode()).hexdigest(), 16):0256b}"[:66]
    words = [word_list()[int(bits[at : at + 11], 2)] for at in range(0, 66, 11)]
    assert root_fingerprint(did) == " ".join(words)
    assert read_phrase(root_fingerprint(did)) == root_fingerprint(did)
