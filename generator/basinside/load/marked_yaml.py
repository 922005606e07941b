"""YAML text to plain data that knows its place, and back from a path to a line.

The text is composed, never constructed: every scalar stays text, a repeated key, an alias or a
tag is a problem, and no input, however broken, gives an exception.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Any, Final

import yaml

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
_ALIAS = re.compile(r"(?:^|[\s\[{,])[&*][A-Za-z0-9_-]+")

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
    try:
        return raw.decode("utf-8-sig"), ()
    except UnicodeDecodeError as error:
        line = raw.count(b"\n", 0, error.start) + 1
        column = error.start - (raw.rfind(b"\n", 0, error.start) + 1) + 1
        message = "this is not UTF-8 text; save the file as UTF-8"
        return "", (_stop(file, "file-unreadable", message, (line, column)),)


def read_yaml(raw: bytes, file: str) -> tuple[Any, tuple[Problem, ...]]:
    """Return the plain data of a YAML file and every problem of its form.

    Mappings become dicts with their place under ``@``, sequences tuples, scalars text or None.
    """
    text, problems = decode(raw, file)
    if problems:
        return None, problems
    root, problems = _compose(text, file)
    if root is None:
        return None, problems
    reader = _Reader(text, file)
    data = reader.plain(root, (), 0)
    return data, tuple(reader.problems)


def _compose(text: str, file: str) -> tuple[Any, tuple[Problem, ...]]:
    try:
        root = yaml.compose(text, _Loader)
    except yaml.MarkedYAMLError as error:
        return None, (_syntax_problem(text, file, error),)
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


def _syntax_problem(text: str, file: str, error: yaml.MarkedYAMLError) -> Problem:
    mark = error.problem_mark or error.context_mark
    line, column = (mark.line + 1, mark.column + 1) if mark else (1, 1)
    lines = text.split("\n")
    source = lines[line - 1] if line <= len(lines) else ""
    said = error.problem or "the file cannot be read as YAML"
    return _stop(file, "yaml-syntax", _plain_words(said, source), (line, column))


def _plain_words(said: str, source: str) -> str:
    """Return what the YAML reader said in words an author knows, with the mend."""
    block = "put the sentence on the next line after `>-`"
    value = source.split(":", 1)[1].strip() if ":" in source else source.strip(" -")
    if "mapping values are not allowed" in said:
        return f"a sentence with “: ” in it looks like a key; {block}"
    if "cannot start any token" in said:
        if "\t" in source:
            return "a tab cannot indent YAML; use spaces"
        return f"a sentence cannot begin with “{value[:1]}”; {block}"
    if "alias" in said or "anchor" in said:
        return f"a sentence cannot begin with “*” or “&”; {block}"
    if "nesting" in said:
        return f"nested deeper than {DEEPEST_NESTING} levels"
    if "expected <block end>" in said and value[:1] in {'"', "'", "{", "["}:
        return f"a sentence that begins with {value[:1]} ends where YAML thinks it does; {block}"
    if "another document" in said:
        return "“---” begins a second document; one file holds one entry"
    if "indentation" in said or "expected <block end>" in said:
        return f"this line is indented otherwise than the lines beside it ({said})"
    return f"YAML cannot read this: {said}"


class _Reader:
    """Turns the nodes of one file into plain data, collecting problems."""

    def __init__(self, text: str, file: str) -> None:
        self.text = text
        self.file = file
        self.problems: list[Problem] = []
        self.seen: set[int] = set()

    def at(self, node: Any, rule: str, message: str) -> None:
        mark = (node.start_mark.line + 1, node.start_mark.column + 1)
        self.problems.append(_stop(self.file, rule, message, mark))

    def plain(self, node: Any, path: tuple[str | int, ...], depth: int) -> Any:
        tag = node.tag
        if tag == _PLAIN:
            return self._scalar(node)
        if tag == _STR:
            return node.value
        if id(node) in self.seen:
            self.at(node, "alias-or-tag", "an alias (& or *) may not be used; write it out")
            return None
        self.seen.add(id(node))
        if depth > DEEPEST_NESTING:
            self.at(node, "yaml-syntax", f"nested deeper than {DEEPEST_NESTING} levels")
            return None
        if tag == _SEQ:
            return tuple(
                self.plain(each, (*path, n), depth + 1) for n, each in enumerate(node.value)
            )
        if tag == _MAP:
            return self._mapping(node, path, depth)
        self.at(node, "alias-or-tag", f"a tag ({tag.rsplit(':', 1)[-1]}) may not be used")
        return None

    def _scalar(self, node: Any) -> str | None:
        value: str = node.value
        end = node.end_mark.index
        if self.text.startswith(" #", end) and not self.text.startswith("  #", end - 1):
            self.at(
                node,
                "sentence-cut",
                "everything from “ #” on is lost as a comment; put the sentence on the next line"
                " after `>-`, or the comment on a line of its own",
            )
        return None if value in _NOTHING else value

    def _mapping(self, node: Any, path: tuple[str | int, ...], depth: int) -> dict[str, Any]:
        out: dict[str, Any] = {PLACE_KEY: Place(self.file, path)}
        for key_node, value_node in node.value:
            key = key_node.value
            if not isinstance(key_node, yaml.ScalarNode) or key == "<<":
                self._odd_key(key_node)
            elif key in out:
                where = "stands for the program" if key == PLACE_KEY else "is given twice here"
                self.at(key_node, "repeated-key", f"the key “{key}” {where}; keep one")
            elif self._is_empty(value_node):
                self._empty_value(node, key_node, key)
            else:
                out[key] = self.plain(value_node, (*path, key), depth + 1)
        return out

    @staticmethod
    def _is_empty(node: Any) -> bool:
        return node.tag == _PLAIN and node.value in _NOTHING

    def _empty_value(self, node: Any, key_node: Any, key: str) -> None:
        if node.flow_style:
            self.at(
                key_node,
                "sentence-cut",
                f"inside braces a comma begins a new key, so “{key}” became one; write the"
                " sentence on a line of its own",
            )
        else:
            self.at(key_node, "value-missing", f"“{key}” has no value; write one or delete the key")

    def _odd_key(self, node: Any) -> None:
        around = self.text[node.start_mark.index - 1 : node.start_mark.index + 1]
        if "{" in around:
            self.at(
                node,
                "sentence-cut",
                "a sentence that begins with {{ must stand in quotes, or on the next line after"
                " `>-`",
            )
        else:
            self.at(node, "alias-or-tag", "a key must be a plain word")


def locate(raw: bytes, places: Iterable[Place]) -> dict[Place, tuple[int, int]]:
    """Return (line, column) of each place in one file, from 1.

    A path that leads nowhere (a missing key) gives the nearest place above it.
    """
    text, problems = decode(raw, "")
    root = None if problems else _compose(text, "")[0]
    return {
        place: place.mark or ((1, 1) if root is None else _find(root, place.path))
        for place in places
    }


def _find(root: Any, path: tuple[str | int, ...]) -> tuple[int, int]:
    node = mark_node = root
    for part in path:
        if isinstance(node, yaml.SequenceNode) and isinstance(part, int):
            if part >= len(node.value):
                break
            node = mark_node = node.value[part]
        elif isinstance(node, yaml.MappingNode):
            found = next(((k, v) for k, v in node.value if k.value == part), None)
            if found is None:
                break
            mark_node, node = found[1], found[1]
            if not isinstance(node, yaml.ScalarNode):
                mark_node = found[0]
    return mark_node.start_mark.line + 1, mark_node.start_mark.column + 1


def _stop(file: str, rule: str, message: str, mark: tuple[int, int] = (1, 1)) -> Problem:
    return Problem(place=Place(file, (), mark), rule=rule, level=Level.NEVER, message=message)
