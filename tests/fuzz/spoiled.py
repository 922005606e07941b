"""A clinic spoiled where an author or an attacker would: words, entries, keys and whole shapes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Final, NamedTuple

import yaml
from hypothesis import strategies as st

HOSTILE: Final = (
    '"><img src=x onerror=alert(1)>',
    "<script>alert(1)</script>",
    "</script><script>alert(1)</script>",
    "[here](javascript:alert(1))",
    "https://example.org/x.js",
    "{{ constructor.prototype }}",
    "{{ 7 * 7 }}",
    "../../../../etc/passwd",
    "..\\..\\up.svg",
    "/etc/passwd",
    "file:///etc/passwd",
    "\u202egnp.exe",
    "\u0000",
    "a" * 3_999,
    "\u00e9" * 500,
    "-0",
    "1e999 min",
    "99999999999999999999 min",
    "0 min",
    "-5 °C",
    "2026-02-29",
    "9999-12-31",
    "9999.1",
    "constructor",
    "__proto__",
    "@",
    "~",
    "null",
    "",
)
WHAT: Final = ("word", "hostile word", "drop entry", "repeat entry", "move entry", "empty", "shape")


class Spoil(NamedTuple):
    """One change: in which file, of which of its nodes, and what of it."""

    file: str
    node: int
    what: str
    other: int


def spoils(files: Mapping[str, bytes]) -> st.SearchStrategy[list[Spoil]]:
    """Return how a clinic may be spoiled: one to four changes."""
    names = [name for name in sorted(files) if name.endswith(".yaml")]
    one = st.builds(
        Spoil,
        st.sampled_from(names),
        st.integers(0, 5_000),
        st.sampled_from(WHAT),
        st.integers(0, 5_000),
    )
    return st.lists(one, min_size=1, max_size=4)


def spoiled(files: Mapping[str, bytes], changes: list[Spoil]) -> dict[str, bytes]:
    """Return a clinic's files with changes in them; a file that no longer parses stays so."""
    out = dict(files)
    for change in changes:
        try:
            text = out[change.file].decode()
            out[change.file] = _changed(text, change).encode("utf-8", "replace")
        except (UnicodeDecodeError, yaml.YAMLError, RecursionError):
            continue
    return out


def _changed(text: str, change: Spoil) -> str:
    nodes = list(_nodes(yaml.compose(text, Loader=yaml.SafeLoader)))
    scalars = [each for each in nodes if isinstance(each, yaml.ScalarNode)]
    entries = [each for each in nodes if isinstance(each, yaml.MappingNode) and not each.flow_style]
    if not scalars or not entries:
        return text
    scalar, other = (scalars[n % len(scalars)] for n in (change.node, change.other))
    one, two = (entries[n % len(entries)] for n in (change.node, change.other))
    match change.what:
        case "word":
            return _put(text, scalar, _piece(text, other))
        case "hostile word":
            return _put(text, scalar, _quoted(HOSTILE[change.other % len(HOSTILE)]))
        case "drop entry":
            return _put(text, one, "")
        case "repeat entry":
            return text[: one.end_mark.index] + _piece(text, one) + text[one.end_mark.index :]
        case "move entry":
            return _put(text, one, _piece(text, two))
        case "empty":
            return _put(text, scalar, "")
        case _:
            return _put(text, scalar, ("[x, y]", "{x: y}", "[[x]]", "[]", "{}")[change.other % 5])


def _nodes(node: yaml.Node | None) -> Iterator[yaml.Node]:
    if node is None:
        return
    yield node
    if isinstance(node, yaml.SequenceNode):
        for each in node.value:
            yield from _nodes(each)
    elif isinstance(node, yaml.MappingNode):
        for key, value in node.value:
            yield from _nodes(key)
            yield from _nodes(value)


def _piece(text: str, node: yaml.Node) -> str:
    return text[node.start_mark.index : node.end_mark.index]


def _put(text: str, node: yaml.Node, words: str) -> str:
    return text[: node.start_mark.index] + words + text[node.end_mark.index :]


def _quoted(words: str) -> str:
    return '"' + words.replace("\\", "\\\\").replace('"', '\\"').replace("\0", "\\0") + '"'
