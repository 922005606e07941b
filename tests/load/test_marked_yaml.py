"""YAML is composed, never constructed; whatever is lost has a problem; places lead back."""

import math
from typing import Any

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from basinside.load.marked_yaml import DEEPEST_NESTING, LARGEST_FILE_BYTES, locate, read_yaml
from basinside.model.entry import PLACE_KEY
from basinside.problem import Level, Place

FILE = "content/a.yaml"

WORDS = st.text(st.characters(codec="utf-8", exclude_categories=["Cc", "Cs"]), min_size=1)
KEYS = st.from_regex(r"[a-z][a-z-]{0,8}", fullmatch=True).filter(lambda key: key != "null")
TREES = st.recursive(
    WORDS,
    lambda inner: (
        st.lists(inner, min_size=1, max_size=4)
        | st.dictionaries(KEYS, inner, min_size=1, max_size=4)
    ),
    max_leaves=12,
)


def without_places(value: object) -> object:
    if isinstance(value, dict):
        return {key: without_places(each) for key, each in value.items() if key != PLACE_KEY}
    if isinstance(value, tuple):
        return [without_places(each) for each in value]
    return value


def paths(value: object, path: tuple[str | int, ...] = ()) -> list[tuple[str | int, ...]]:
    if isinstance(value, dict):
        below = [each for key, inner in value.items() for each in paths(inner, (*path, key))]
    elif isinstance(value, list):
        below = [each for n, inner in enumerate(value) for each in paths(inner, (*path, n))]
    else:
        below = []
    return [path, *below]


@given(st.dictionaries(KEYS, TREES, min_size=1), st.sampled_from([None, True, False]))
def test_what_was_written_is_read(tree: dict[str, object], flow: bool | None) -> None:
    text = yaml.safe_dump(
        tree, default_style='"', default_flow_style=flow, allow_unicode=True, width=math.inf
    )
    data, problems = read_yaml(text.encode(), FILE)
    assert problems == ()
    assert without_places(data) == tree


@given(st.dictionaries(KEYS, TREES, min_size=1))
def test_every_path_leads_to_its_line(tree: dict[str, object]) -> None:
    text = yaml.safe_dump(tree, default_style='"', allow_unicode=True, width=math.inf)
    places = [Place(FILE, path) for path in paths(tree)]
    root = yaml.compose(text, yaml.CSafeLoader)
    for place, (line, column) in locate(text.encode(), places).items():
        node: Any = root
        for part in place.path:
            pairs = node.value
            node = (
                pairs[part]
                if isinstance(part, int)
                else {key.value: inner for key, inner in pairs}[part]
            )
        if isinstance(node, yaml.ScalarNode) and place.path:
            assert (line, column) == (node.start_mark.line + 1, node.start_mark.column + 1)
        assert 1 <= line <= text.count("\n") + 1


def test_scalars_stay_text() -> None:
    raw = b"edition: 2026.10\nyes: no\non: 0x10\nday: 2026-11-20\nbig: 1_000\nfar: .inf\n"
    data, problems = read_yaml(raw, FILE)
    assert problems == ()
    assert without_places(data) == {
        "edition": "2026.10", "yes": "no", "on": "0x10", "day": "2026-11-20", "big": "1_000",
        "far": ".inf",
    }  # fmt: skip


@pytest.mark.parametrize("empty", ["", "~", "null", "Null"])
def test_an_empty_value_is_a_problem_at_its_key(empty: str) -> None:
    data, problems = read_yaml(f"a: b\nkey: {empty}\n".encode(), FILE)
    assert without_places(data) == {"a": "b", "key": None}
    assert [(each.rule, each.place.mark) for each in problems] == [("value-missing", (2, 1))]


@pytest.mark.parametrize("text", ["", "# only a remark\n", "~\n", "---\n"])
def test_a_file_without_anything_is_empty(text: str) -> None:
    data, problems = read_yaml(text.encode(), FILE)
    assert data is None
    assert [each.rule for each in problems] == ["file-empty"]


@pytest.mark.parametrize("quoted", ["'~'", '"null"', "'null'"])
def test_a_quoted_word_is_never_nothing(quoted: str) -> None:
    data, problems = read_yaml(f"key: {quoted}\n".encode(), FILE)
    assert problems == ()
    assert without_places(data) == {"key": quoted[1:-1]}


@pytest.mark.parametrize(
    ("text", "mark"),
    [
        ("a: &x b\n", (1, 4)),
        ("a: &x b\nc: *x\n", (1, 4)),
        ("a: &x [b]\n", (1, 4)),
        ("a: &x\n  b: c\n", (1, 4)),
        ("a: !x b\n", (1, 4)),
        ("a: !!str b\n", (1, 4)),
        ("a: ! b\n", (1, 4)),
        ("a: [b, !x c]\n", (1, 8)),
        ("!x {a: b}\n", (1, 1)),
    ],
)
def test_anchors_and_tags_are_refused_where_they_stand(text: str, mark: tuple[int, int]) -> None:
    _, problems = read_yaml(text.encode(), FILE)
    assert [(each.rule, each.place.mark) for each in problems] == [("alias-or-tag", mark)]


def test_a_repeated_key_keeps_the_first_and_says_so() -> None:
    data, problems = read_yaml(b"a: b\nc: d\na: e\n", FILE)
    assert without_places(data) == {"a": "b", "c": "d"}
    assert [(each.rule, each.place.mark) for each in problems] == [("repeated-key", (3, 1))]


def test_nobody_writes_the_key_of_places() -> None:
    data, problems = read_yaml(b"'@': b\n", FILE)
    assert data == {PLACE_KEY: Place(FILE)}
    assert [each.rule for each in problems] == ["repeated-key"]


def test_nesting_has_an_end() -> None:
    def nested(depth: int) -> bytes:
        return b"[" * depth + b"a" + b"]" * depth

    assert read_yaml(nested(DEEPEST_NESTING), FILE)[1] == ()
    _, problems = read_yaml(nested(DEEPEST_NESTING + 5), FILE)
    assert [each.rule for each in problems] == ["yaml-syntax"]


def test_size_and_encoding_are_said() -> None:
    _, large = read_yaml(b"#" * (LARGEST_FILE_BYTES + 1), FILE)
    assert [each.message for each in large] == ["the file is larger than 2 MB"]
    _, odd = read_yaml("a: b\nc: é\n".encode("latin-1"), FILE)
    assert [(each.message, each.place.mark) for each in odd] == [
        ("this is not UTF-8 text; save the file as UTF-8", (2, 4))
    ]
    _, wide = read_yaml("a: b\n".encode("utf-16"), FILE)
    assert [each.message for each in wide] == ["the file is UTF-16; save it as UTF-8"]


@pytest.mark.parametrize(
    ("text", "sign"),
    [
        ("a: hold it \u202enim 02\n", "U+202E"),
        ('a: "hold it \\u202enim 02"\n', "U+202E"),
        ('a: "hold it\\x00"\n', "U+0000"),
        ("a: >-\n  hold it\n  \u2066for long\n", "U+2066"),
    ],
)
def test_signs_that_turn_or_cut_a_text_unseen_are_refused(text: str, sign: str) -> None:
    _, problems = read_yaml(text.encode(), FILE)
    said = f"this text holds {sign}, a sign that nobody sees; delete it"
    assert [(each.message, each.place.mark) for each in problems] == [(said, (1, 4))]


def test_spaces_and_joiners_that_writing_needs_are_kept() -> None:
    text = "20\u00a0min, \u0646\u0645\u06cc\u200c\u0634\u0648\u062f"
    data, problems = read_yaml(f"a: {text}\n".encode(), FILE)
    assert (data["a"], problems) == (text, ())


def test_a_missing_key_leads_to_what_it_is_missing_in() -> None:
    raw = b"a:\n  - b: c\n  - d: e\n"
    below, beyond = Place(FILE, ("a", 1, "x")), Place(FILE, ("a", 7))
    assert locate(raw, [below, beyond]) == {below: (3, 5), beyond: (1, 1)}


@given(st.binary(max_size=200))
def test_no_bytes_raise_and_nothing_is_lost_in_silence(raw: bytes) -> None:
    data, problems = read_yaml(raw, FILE)
    assert all(each.level is Level.NEVER for each in problems)
    assert data is not None or problems


@given(st.text("ab:-'\"[]{}#&*!|>%@`?, \n\t", max_size=40))
def test_signs_of_yaml_in_any_order_give_lines_of_the_file(text: str) -> None:
    _, problems = read_yaml(text.encode(), FILE)
    for each in problems:
        assert each.place.mark is not None
        assert 1 <= each.place.mark[0] <= text.count("\n") + 1
