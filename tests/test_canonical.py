"""Canonical bytes agree with another program's, and refuse what two programs could differ on."""

import json

import pytest
import rfc8785
from hypothesis import given
from hypothesis import strategies as st

from basinside.canonical import base64url, canonical_bytes, digest, from_base64url
from tests.reference.published_vectors import canonical_pairs

LARGEST = 2**53 - 1
OUR_PAIRS = [
    ("escapes", b'["\\u0041\\u000A\\/\\u001f\\u2028"]', '["A\\n/\\u001f\u2028"]'.encode()),
    ("order", b'{"b": 1, "B": 2, "a b": -0, "": null}', b'{"":null,"B":2,"a b":0,"b":1}'),
]

texts = st.text()  # hypothesis draws no halves of surrogate pairs
leaves = st.none() | st.booleans() | st.integers(min_value=-LARGEST, max_value=LARGEST) | texts
documents = st.recursive(
    leaves,
    lambda inner: st.lists(inner) | st.dictionaries(texts, inner),
    max_leaves=40,
)


@given(documents)
def test_agrees_with_another_program(document: object) -> None:
    assert canonical_bytes(document) == rfc8785.dumps(document)  # type: ignore[arg-type]


@given(documents)
def test_reads_back_as_the_same_value(document: object) -> None:
    assert json.loads(canonical_bytes(document)) == document


def test_keys_are_sorted_by_utf16_units() -> None:
    # RFC 8785, 3.2.3: the smiley, beyond the basic plane, comes before the Hebrew letter's form.
    ordered = '{"\\r":1,"1":2,"\x80":3,"\xf6":4,"\u20ac":5,"\U0001f600":6,"\ufb33":7}'
    assert canonical_bytes(dict(reversed(json.loads(ordered).items()))) == ordered.encode()


def test_letters_are_not_changed() -> None:
    assert canonical_bytes("e\u0301") != canonical_bytes("\u00e9")


def test_tuples_are_lists() -> None:
    assert canonical_bytes((1, ("a",))) == b'[1,["a"]]'


@pytest.mark.parametrize(
    ("value", "says"),
    [
        ({"a": [1.0]}, "a/0 is of a kind .*float"),
        ({"a": {"b": 2**53}}, r"a/b is an integer beyond 2\^53"),
        (-(2**53), "the value is an integer beyond"),
        ({"a": "\ud800"}, "a holds half of a surrogate pair"),
        ({"\udc00": 1}, "half of a surrogate pair"),
        ({"a": {1: 2}}, "a has a key that is not text: 1"),
        ({"a": b"x"}, "bytes"),
        ({"a": {1, 2}}, "set"),
    ],
)
def test_refuses_and_says_where(value: object, says: str) -> None:
    with pytest.raises(ValueError, match=says):
        canonical_bytes(value)


def test_a_bottomless_value_is_refused() -> None:
    value: list[object] = []
    for _ in range(100_000):
        value = [value]
    with pytest.raises(ValueError, match="nested too deep"):
        canonical_bytes(value)


def test_golden_digest() -> None:
    # sha256 of {"a":[1,"ü"],"b":null} in UTF-8, worked out with sha256sum.
    value = {"b": None, "a": [1, "ü"]}
    assert digest("form", value) == "form-v1:AxXn2n2tFUFa9QeVtu6iKyKSnGgE_0qtPrvEWs5KGqc"


@given(st.binary())
def test_base64url_goes_there_and_back(data: bytes) -> None:
    assert from_base64url(base64url(data)) == data
    assert "=" not in base64url(data)


@pytest.mark.parametrize("text", ["QQ==", "Q", "QR", "Q+==", "a b", "ä", "QQ\n", "QQ/_"])
def test_only_one_spelling_of_base64url_is_read(text: str) -> None:
    with pytest.raises(ValueError, match="base64url"):
        from_base64url(text)


@pytest.mark.parametrize(
    ("source", "expected"),
    [pytest.param(source, out, id=name) for name, source, out in (*OUR_PAIRS, *canonical_pairs())],
)
def test_published_pairs(source: bytes, expected: bytes) -> None:
    value = json.loads(source, parse_float=whole_or_float)
    if b"numbers" in expected:  # the one pair with fractions, which we refuse
        with pytest.raises(ValueError, match=r"float|integer"):
            canonical_bytes(value)
    else:
        assert canonical_bytes(value) == expected


def whole_or_float(text: str) -> float:
    value = float(text)
    return int(value) if value.is_integer() else value
