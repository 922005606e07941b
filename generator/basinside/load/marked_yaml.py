"""YAML text to plain data that knows its place, and back from a path to a line.

The text is composed, never constructed: every scalar stays text, a repeated key, an alias or a
tag is a problem, and no input, however broken, gives an exception.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from sys import intern
from typing import Any, Final

import yaml

from basinside.load.syntax import BLOCK, BRACES_NEED_QUOTES, explain
from basinside.model.entry import PLACE_KEY
from basinside.problem import Level, Place, Problem

LARGEST_FILE_BYTES: Final = 2_000_000
"""A content file of this size is a mistake or an attack (our own cap; a chapter is 20 kB)."""
DEEPEST_NESTING: Final = 40
"""Levels of nesting; the deepest entry of the formats has nine (our own cap)."""

_STR = "tag:yaml.org,2002:str"
_MAP = "tag:yaml.org,2002:map"
_SEQ = "tag:yaml.org,2002:seq"
_PLAIN = "?plain"
_NOTHING = frozenset({"", "~", "null", "Null", "NULL"})
_NO_SPACE_IN_BRACES = re.compile(r"[A-Za-z0-9_.-]+:\S+\Z")
_GOES_ON = re.compile(r"(?:and|or|but|then)\s+\S")
_UNSEEN = re.compile(
    r"[\x00-\x08\x0b-\x1f\x7f-\x9f\u2028\u2029\u202a-\u202e\u2066-\u2069\ud800-\udfff]"
)
"""Signs that nobody sees, and that cut a text or show its letters and figures in another order."""

_BaseLoader: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


class _Loader(_BaseLoader):  # type: ignore[misc]
    """A loader that guesses no types."""

    def resolve(self, kind: Any, value: Any, implicit: Any) -> str:  # noqa: ARG002
        if kind is yaml.ScalarNode:
            return _PLAIN if implicit[0] else _STR
        return _MAP if kind is yaml.MappingNode else _SEQ


def decode(raw: bytes, file: str) -> tuple[str, tuple[Problem, ...]]:
    """Return the text of a file, or one problem that says why it is no text."""
    if len(raw) > LARGEST_FILE_BYTES:
        size = f"{LARGEST_FILE_BYTES // 1_000_000} MB"
        return "", (_stop(file, "file-unreadable", f"the file is larger than {size}"),)
    if raw.startswith((b"\xff\xfe", b"\xfe\xff")):
        return "", (_stop(file, "file-unreadable", "the file is UTF-16; save it as UTF-8"),)
    if raw[1:2] == b"\0" or raw[:1] == b"\0":
        return "", (_stop(file, "file-unreadable", "the file is UTF-16; save it as UTF-8"),)
    try:
        return raw.decode("utf-8-sig"), ()
    except UnicodeDecodeError as error:
        line = raw.count(b"\n", 0, error.start) + 1
        column = error.start - (raw.rfind(b"\n", 0, error.start) + 1) + 1
        message = "this is not UTF-8 text; save the file as UTF-8"
        return "", (_stop(file, "file-unreadable", message, (line, column)),)


def read_yaml(raw: bytes, file: str) -> tuple[Any, tuple[Problem, ...]]:
    """Return the plain data of a YAML file and every problem of its form.

    Mappings become dicts with their place under ``@``, sequences tuples, scalars text. What
    cannot be kept is None, and always has its problem.
    """
    text, problems = decode(raw, file)
    if problems:
        return None, problems
    root, problems = _compose(text, file)
    if root is None:
        return None, problems
    reader = _Reader(text, file)
    data = reader.plain(root, (), 0)
    if data is None and not reader.problems:
        reader.at(root, "file-empty", "the file is empty")
    return data, tuple(dict.fromkeys(reader.problems))


def _compose(text: str, file: str) -> tuple[Any, tuple[Problem, ...]]:
    try:
        root = yaml.compose(text, _Loader)
    except yaml.MarkedYAMLError as error:
        fault = explain(text, error)
        return None, (_stop(file, "yaml-syntax", fault.message, fault.mark),)
    except yaml.reader.ReaderError as error:
        before = text[: error.position] if isinstance(error.position, int) else ""
        mark = (before.count("\n") + 1, len(before) - (before.rfind("\n") + 1) + 1)
        message = "this character may not stand in the file; delete it"
        return None, (_stop(file, "file-unreadable", message, mark),)
    except (yaml.YAMLError, RecursionError):
        return None, (_stop(file, "yaml-syntax", "the file cannot be read as YAML"),)
    if root is None:
        return None, (_stop(file, "file-empty", "the file is empty"),)
    return root, ()


class _Reader:
    """Turns the nodes of one file into plain data, collecting problems.

    Equal texts are one object: a large handbook says much a thousand times over.
    """

    def __init__(self, text: str, file: str) -> None:
        self.text = text
        self.file = file
        self.problems: list[Problem] = []
        self.seen: set[int] = set()

    def at(self, node: Any, rule: str, message: str) -> None:
        mark = (node.start_mark.line + 1, node.start_mark.column + 1)
        self.problems.append(_stop(self.file, rule, message, mark))

    def plain(self, node: Any, path: tuple[str | int, ...], depth: int) -> Any:
        if self.text[node.start_mark.index : node.start_mark.index + 1] in {"&", "!"}:
            return self._marked(node)
        if isinstance(node, yaml.ScalarNode):
            return self._scalar(node)
        if id(node) in self.seen:
            self.at(node, "alias-or-tag", "an alias (& or *) may not be used; write it out")
            return None
        self.seen.add(id(node))
        if depth > DEEPEST_NESTING:
            self.at(node, "yaml-syntax", f"nested deeper than {DEEPEST_NESTING} levels")
            return None
        if isinstance(node, yaml.SequenceNode):
            return self._sequence(node, path, depth)
        return self._mapping(node, path, depth)

    def _marked(self, node: Any) -> None:
        """Refuse a node with an anchor or a tag, which would be dropped without a word."""
        sign = self.text[node.start_mark.index]
        what = "a name for an alias" if sign == "&" else "a tag"
        self.at(
            node,
            "alias-or-tag",
            f"“{sign}” begins {what}, which may not be used; write it out. If it begins a sentence,"
            f" {BLOCK}",
        )

    def _scalar(self, node: Any) -> str | None:
        value: str = node.value
        end = node.end_mark.index
        unseen = None if value.isprintable() else _UNSEEN.search(value)
        if unseen:
            self.at(
                node,
                "file-unreadable",
                f"this text holds U+{ord(unseen[0]):04X}, a sign that nobody sees; delete it",
            )
            return None
        in_line = node.style not in {"|", ">"}
        if in_line and self.text.startswith(" #", end) and self.text[end - 1] != " ":
            self.at(
                node,
                "sentence-cut",
                f"everything from “ #” on is lost as a comment; {BLOCK}, or the comment on a line"
                " of its own",
            )
        return None if node.tag == _PLAIN and value in _NOTHING else intern(value)

    def _sequence(self, node: Any, path: tuple[str | int, ...], depth: int) -> tuple[Any, ...]:
        for n, each in enumerate(node.value):
            if self._is_empty(each):
                self.at(each, "value-missing", "this entry has no value; write one or delete it")
            elif n and node.flow_style and each.tag == _PLAIN and _GOES_ON.match(each.value):
                self.at(
                    each,
                    "sentence-cut",
                    f"inside brackets a comma begins a new entry, so “{each.value}” became one;"
                    " write one entry to a line, each after “- ”",
                )
        return tuple(self.plain(each, (*path, n), depth + 1) for n, each in enumerate(node.value))

    def _mapping(self, node: Any, path: tuple[str | int, ...], depth: int) -> dict[str, Any] | None:
        out: dict[str, Any] = {PLACE_KEY: Place(self.file, path)}
        for key_node, value_node in node.value:
            key = key_node.value
            if not isinstance(key_node, yaml.ScalarNode) or key == "<<":
                if self._is_reference(key_node):
                    self.at(key_node, "sentence-cut", BRACES_NEED_QUOTES)
                    return None
                self.at(key_node, "alias-or-tag", "a key must be a plain word")
            elif key in out:
                where = "stands for the program" if key == PLACE_KEY else "is given twice here"
                self.at(key_node, "repeated-key", f"the key “{key}” {where}; keep one")
            elif self._is_empty(value_node):
                self._empty_value(node, key_node, key)
                if not node.flow_style:
                    out[key] = None
            else:
                key = intern(key)
                out[key] = self.plain(value_node, (*path, key), depth + 1)
        return out

    @staticmethod
    def _is_empty(node: Any) -> bool:
        return node.tag == _PLAIN and node.value in _NOTHING

    def _empty_value(self, node: Any, key_node: Any, key: str) -> None:
        if not node.flow_style:
            self.at(key_node, "value-missing", f"“{key}” has no value; write one or delete the key")
            return
        if _NO_SPACE_IN_BRACES.match(key):
            begin = key.partition(":")[0]
            self.at(key_node, "yaml-syntax", f"write a space after the colon of “{begin}:”")
            return
        mend = "write the sentence on a line of its own"
        if key[:1].isdigit():
            mend = "write a decimal with a point, and a citation without a comma"
        self.at(
            key_node,
            "sentence-cut",
            f"inside braces a comma begins a new key, so “{key}” became one; {mend}",
        )

    def _is_reference(self, node: Any) -> bool:
        begin = node.start_mark.index
        return isinstance(node, yaml.MappingNode) and self.text[begin - 1 : begin + 1] == "{{"


def locate(raw: bytes, places: Iterable[Place]) -> dict[Place, tuple[int, int]]:
    """Return (line, column) of each place in one file, from 1.

    A path that leads nowhere (a missing key) gives the nearest place above it.
    """
    text, problems = decode(raw, "")
    root = None if problems else _compose(text, "")[0]
    index: dict[int, dict[Any, Any]] = {}
    return {
        place: place.mark or ((1, 1) if root is None else _find(root, place.path, index))
        for place in places
    }


def _find(
    root: Any, path: tuple[str | int, ...], index: dict[int, dict[Any, Any]]
) -> tuple[int, int]:
    """Return the mark of a path; ``index`` keeps what each mapping's keys lead to."""
    node = mark_node = root
    for part in path:
        if isinstance(node, yaml.SequenceNode) and isinstance(part, int):
            if part >= len(node.value):
                break
            node = mark_node = node.value[part]
        elif isinstance(node, yaml.MappingNode):
            if id(node) not in index:
                keys = [each for each in node.value if isinstance(each[0], yaml.ScalarNode)]
                index[id(node)] = {each[0].value: each for each in reversed(keys)}
            found = index[id(node)].get(part)
            if found is None:
                break
            mark_node, node = found[1], found[1]
            if not isinstance(node, yaml.ScalarNode):
                mark_node = found[0]
    return mark_node.start_mark.line + 1, mark_node.start_mark.column + 1


def _stop(file: str, rule: str, message: str, mark: tuple[int, int] = (1, 1)) -> Problem:
    return Problem(place=Place(file, (), mark), rule=rule, level=Level.NEVER, message=message)
