"""Canonical bytes and strict reading: the page, our Python and another program agree."""

import json
import random
from pathlib import Path
from typing import Any

import pytest
import rfc8785

from basinside.canonical import canonical_bytes
from basinside.load.json_text import JsonTextError, read_json
from tests.browser import script_lab
from tests.conftest import Opener

pytestmark = pytest.mark.browser

DOCUMENTS = 500
LETTERS = (
    '\x00\x1f"\\/\b\f\n\r\t\x7f\x80é€\u2028\ufeff\ufb33\U0001f600\U0010ffffabcXYZ019 __proto__'
)
CANONICAL = "texts => texts.map((text) => Basinside.canonical(Basinside.readJson(text)))"
READ = """texts => texts.map((text) => {
  try { return ['read', Basinside.canonical(Basinside.readJson(text))]; }
  catch (error) {
    if (!(error instanceof Basinside.JsonTextError)) throw error;
    return ['refused', error.reason];
  }
})"""


def a_text(rng: random.Random) -> str:
    return "".join(rng.choice(LETTERS) for _ in range(rng.randrange(9)))


def a_value(rng: random.Random, depth: int = 0) -> Any:
    kind = rng.randrange(5 if depth > 3 else 8)
    if kind == 0:
        return rng.choice([None, True, False])
    if kind == 1:
        return rng.choice([0, -1, 2**53 - 1, 1 - 2**53, rng.randrange(-(10**6), 10**6)])
    if kind < 5:
        return a_text(rng)
    if kind == 5:
        return [a_value(rng, depth + 1) for _ in range(rng.randrange(5))]
    return {a_text(rng): a_value(rng, depth + 1) for _ in range(rng.randrange(6))}


def test_canonical_bytes_agree_with_ours_and_with_another_program(
    tmp_path: Path, open_page: Opener
) -> None:
    rng = random.Random(8785)
    documents = [{"whole": a_value(rng), "__proto__": a_value(rng)} for _ in range(DOCUMENTS)]
    texts = [json.dumps(each, ensure_ascii=rng.random() < 0.5) for each in documents]
    folder = script_lab.lay(tmp_path, {"a.html": ("", {})})
    page = open_page(folder / "a.html")
    theirs = [text.encode("utf-8") for text in page.evaluate(CANONICAL, texts)]
    assert theirs == [rfc8785.dumps(each) for each in documents]
    assert theirs == [canonical_bytes(each) for each in documents]


@pytest.mark.parametrize("value", ["0.5", "NaN", "2 ** 53", "undefined", "'\\ud800'", "{a: 1n}"])
def test_what_has_no_canonical_form_is_refused(
    tmp_path: Path, open_page: Opener, value: str
) -> None:
    folder = script_lab.lay(tmp_path, {"a.html": ("", {})})
    said = open_page(folder / "a.html").evaluate(
        f"() => {{ try {{ return Basinside.canonical({value}); }}"
        " catch (error) { return error.name; } }"
    )
    assert said == "TypeError"


def test_the_page_refuses_what_python_refuses(tmp_path: Path, open_page: Opener) -> None:
    deep = "[" * 65 + "]" * 65
    texts = [
        '{"a": 1}',
        '\ufeff{"a": [1, -0, "é"]}',
        " [ ] ",
        '"\\ud83d\\ude00"',
        "[" * 64 + "]" * 64,
        '{"a": 1, "a": 2}',
        '{"a": 1, "\\u0061": 2}',
        '{"b": {"a": 1, "a": 2}}',
        "1.0",
        "1e2",
        "9007199254740992",
        "-9007199254740991",
        "[01]",
        "-",
        '"\\ud800"',
        '{"\\udc00": 1}',
        deep,
        "",
        "{",
        "[1,]",
        '{"a":}',
        '{"a" 1}',
        "{1: 2}",
        "[1] 2",
        "nul",
        "NaN",
        "'a'",
        '"a\nb"',
        '"\\x"',
        "[1 2]",
        '{"a": 1,}',
        "\x0b1",
        '{"__proto__": 1, "__proto__": 2}',
        "truefalse",
    ]
    rng = random.Random(53)
    good = json.dumps({"a": [1, {"b": "c"}], "d": "\u00e9", "e": None})
    for _ in range(600):
        broken = list(good)
        for _ in range(rng.randint(1, 2)):
            broken[rng.randrange(len(broken))] = rng.choice('{}[]:,"\\ae1 0.-')
        texts.append("".join(broken))

    ours = []
    for text in texts:
        try:
            ours.append(["read", canonical_bytes(read_json(text.encode(), "a")).decode()])
        except JsonTextError:
            ours.append(["refused"])
    folder = script_lab.lay(tmp_path, {"a.html": ("", {})})
    theirs = open_page(folder / "a.html").evaluate(READ, texts)
    differing = [
        (text, one, other)
        for text, one, other in zip(texts, ours, theirs, strict=True)
        if one[0] != other[0] or (one[0] == "read" and one != other)
    ]
    assert differing == []
    assert {each[1] for each in theirs if each[0] == "refused"} >= {
        "not-json", "repeated-key", "not-whole", "half-pair", "too-deep"
    }  # fmt: skip
