"""Foreign JSON: read exactly as everybody reads it, or refused in one line with its place."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from basinside.load.json_text import DEEPEST, JsonTextError, read_json

plain_documents = st.recursive(
    st.none() | st.booleans() | st.integers(-(2**53) + 1, 2**53 - 1) | st.text(),
    lambda inner: st.lists(inner) | st.dictionaries(st.text(), inner),
    max_leaves=30,
)


@given(plain_documents, st.booleans(), st.sampled_from([None, 1, 3]))
def test_a_sound_text_is_read(
    document: object,
    ascii_only: bool,
    indent: int | None,
) -> None:
    text = json.dumps(document, ensure_ascii=ascii_only, indent=indent)
    assert read_json(text.encode(), "a.json") == document


def test_a_byte_order_mark_is_tolerated() -> None:
    assert read_json(b'\xef\xbb\xbf{"a": 1}', "a.json") == {"a": 1}


@pytest.mark.parametrize(
    ("text", "says"),
    [
        (b'{"a": 1,\n "b": 2,\n "a": 3}', 'a.json:3:2: The key "a" stands here twice.'),
        (b'{"a": {"b": 1, "\\u0062": 2}}', 'a.json:1:16: The key "b" stands here twice.'),
        (b'{"a": 1.5}', "a.json:1:7: 1.5 is not a whole number; our files hold no others."),
        (b"[1e3]", "a.json:1:2: 1e3 is not a whole number; our files hold no others."),
        (b"[1,\n NaN]", "a.json:2:2: NaN is not JSON."),
        (b"[-Infinity]", "a.json:1:2: -Infinity is not JSON."),
        (b"[9007199254740992]", "a.json:1:2: 9007199254740992 is beyond 2^53 - 1."),
        (b'["\\ud800"]', "a.json:1:2: This text holds half of a surrogate pair."),
        (b'["\xff"]', "a.json:1:3: The file is not UTF-8 text."),
        (
            b'{"a"',
            (
                "a.json:1:5: This is no file of this program, or it was cut short"
                " (expecting ':' delimiter)."
            ),
        ),
        (
            b"",
            "a.json:1:1: This is no file of this program, or it was cut short (expecting value).",
        ),
        (
            b"[1] 2",
            "a.json:1:5: This is no file of this program, or it was cut short (extra data).",
        ),
        (b"[" * 65 + b"]" * 65, "a.json:1:65: Nested deeper than 64 levels."),
    ],
)
def test_what_two_readers_could_differ_on_is_refused(text: bytes, says: str) -> None:
    with pytest.raises(JsonTextError) as refused:
        read_json(text, "a.json")
    assert str(refused.value) == says


def test_the_same_key_in_two_objects_is_no_repetition() -> None:
    text = b'[{"a": {"a": 1, "b": ["a", "a"]}}, {"a": "a"}]'
    assert read_json(text, "a.json") == json.loads(text)


@pytest.mark.parametrize("opening", [b"[", b'{"a":'])
def test_bottomless_nesting_is_refused(opening: bytes) -> None:
    with pytest.raises(JsonTextError, match=f"Nested deeper than {DEEPEST} levels"):
        read_json(opening * 200_000, "a.json")


def test_thousands_of_digits_are_refused() -> None:
    with pytest.raises(JsonTextError, match="beyond"):
        read_json(b"[" + b"9" * 50_000 + b"]", "a.json")


def test_a_large_file_is_not_looked_at() -> None:
    with pytest.raises(JsonTextError, match="larger than 10 bytes"):
        read_json(b'"01234567890"', "a.json", max_bytes=10)


@given(st.binary(max_size=200))
def test_no_bytes_give_another_exception(data: bytes) -> None:
    try:
        read_json(data, "a.json")
    except JsonTextError as error:
        assert "\n" not in str(error)


@given(plain_documents, st.integers(min_value=0), st.binary(max_size=3))
def test_no_broken_file_gives_another_exception(document: object, at: int, new: bytes) -> None:
    text = json.dumps(document).encode()
    cut = at % (len(text) + 1)
    try:
        read_json(text[:cut] + new + text[cut + len(new) :], "a.json")
    except JsonTextError as error:
        assert error.line >= 1
        assert error.column >= 1
