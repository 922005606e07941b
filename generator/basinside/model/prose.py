"""Sentences with references: ``{{ boil.hold }}`` or ``{{ boil.hold in minutes }}``, nothing else.

Author text never meets a template engine. A sentence is read once into spans; pages place text
escaped and values as data elements, digests replace a reference by its value in base units.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

_REFERENCE = re.compile(r"\{\{(.*?)\}\}", re.DOTALL)
_ONE_BRACE = re.compile(
    r"(?<!\{)\{\s*([a-z0-9]+(?:-[a-z0-9]+)*(?:\.[a-z0-9-]+)+(?:\s+in\s+[^{}]*)?)\s*\}(?!\})"
)
_INSIDE = re.compile(
    r"\s*([a-z0-9]+(?:-[a-z0-9]+)*(?:\.[a-z0-9]+(?:-[a-z0-9]+)*)+)(?:\s+in\s+(\S.*?))?\s*\Z"
)


class ProseError(ValueError):
    """A sentence that cannot be read, in one plain sentence with its mend."""


@dataclass(frozen=True, slots=True)
class Words:
    """A run of plain text."""

    text: str


@dataclass(frozen=True, slots=True)
class Reference:
    """A value that the sentence refers to; ``unit`` is the unit to show it in, or empty."""

    figure: str
    unit: str = ""


Span = Words | Reference


@lru_cache(maxsize=65_536)
def read_prose(text: str) -> tuple[Span, ...]:
    """Return the spans of a sentence, white space collapsed.

    Raises:
        ProseError: when a reference is not closed, or holds more than an id and a unit.
    """
    flat = " ".join(text.split())
    one_brace = _ONE_BRACE.search(flat) if "{" in flat else None
    if one_brace:
        inside = one_brace.group(1).strip()
        raise ProseError(f"a value stands in two braces; write {{{{ {inside} }}}}")
    if "{{" not in flat and "}}" not in flat:
        return (Words(flat),)
    spans: list[Span] = []
    end = 0
    for found in _REFERENCE.finditer(flat):
        if found.start() > end:
            spans.append(Words(flat[end : found.start()]))
        spans.append(_read_reference(found.group(1)))
        end = found.end()
    if end < len(flat):
        spans.append(Words(flat[end:]))
    for span in spans:
        if isinstance(span, Words) and ("{{" in span.text or "}}" in span.text):
            raise ProseError("a reference is opened or closed only half; write {{ boil.hold }}")
    return tuple(spans)


def _read_reference(inside: str) -> Reference:
    found = _INSIDE.match(inside)
    if not found:
        raise ProseError(
            f"“{{{{{inside}}}}}” is no reference; write the id of a value, as in"
            " {{ boil.hold }} or {{ boil.hold in minutes }}"
        )
    return Reference(found.group(1), found.group(2) or "")


def references(text: str) -> tuple[Reference, ...]:
    """Return the values a sentence refers to, in order."""
    if "{{" not in text:
        return ()
    return tuple(span for span in read_prose(text) if isinstance(span, Reference))
