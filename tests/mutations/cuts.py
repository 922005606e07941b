"""A clinic's YAML as text that can be cut: whole steps, single words, lists."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

import yaml


class Span(NamedTuple):
    """A piece of a file: characters ``start`` to ``end``, and the node that was read there."""

    start: int
    end: int
    node: yaml.Node


def root_of(text: str) -> yaml.MappingNode:
    """Return the mapping that a file is."""
    node = yaml.compose(text, Loader=getattr(yaml, "CSafeLoader", yaml.SafeLoader))
    assert isinstance(node, yaml.MappingNode)
    return node


def value_of(node: yaml.Node, key: str) -> yaml.Node | None:
    """Return the value of a mapping's key; None where it is no mapping or has no such key."""
    if isinstance(node, yaml.MappingNode):
        for name, value in node.value:
            if name.value == key:
                return value
    return None


def word_of(node: yaml.Node | None) -> str:
    """Return a scalar's words; nothing for anything else."""
    return node.value if isinstance(node, yaml.ScalarNode) else ""


def entries_of(node: yaml.Node | None) -> list[yaml.Node]:
    """Return the entries of a list; none for anything else."""
    return list(node.value) if isinstance(node, yaml.SequenceNode) else []


def lines_of(text: str, node: yaml.Node) -> Span:
    """Return the whole lines of a block entry, its dash and the comments after it too."""
    start = text.rfind("\n", 0, node.start_mark.index) + 1
    end = node.end_mark.index
    if end < len(text):
        end = text.rfind("\n", 0, end) + 1
    return Span(start, max(end, start), node)


def line_of_key(text: str, node: yaml.MappingNode, key: str) -> Span | None:
    """Return the whole lines of one key of a block mapping, where they are its own."""
    for name, value in node.value:
        if name.value == key and not node.flow_style:
            start = text.rfind("\n", 0, name.start_mark.index) + 1
            if text[start : name.start_mark.index].strip():
                return None  # it stands behind the dash of its entry
            end = text.find("\n", value.end_mark.index - 1) + 1
            if not value.end_mark.column or isinstance(value, yaml.MappingNode):
                end = text.rfind("\n", 0, value.end_mark.index) + 1
            return Span(start, end, value)
    return None


def without(text: str, span: Span) -> str:
    """Return a text without one piece of it."""
    return text[: span.start] + text[span.end :]


def instead(text: str, node: yaml.Node, words: str) -> str:
    """Return a text with other words in the place of one scalar."""
    return text[: node.start_mark.index] + words + text[node.end_mark.index :]


def exchanged(text: str, one: Span, other: Span) -> str:
    """Return a text with two pieces in each other's place; ``one`` stands first."""
    return (
        text[: one.start]
        + text[other.start : other.end]
        + text[one.end : other.start]
        + text[one.start : one.end]
        + text[other.end :]
    )


def steps_of(text: str) -> Iterator[tuple[yaml.Node, yaml.Node, int]]:
    """Yield each stage, each of its steps that is written whole, and how many it has."""
    for stage in entries_of(value_of(root_of(text), "stages")):
        steps = entries_of(value_of(stage, "steps"))
        for step in steps:
            yield stage, step, len(steps)
