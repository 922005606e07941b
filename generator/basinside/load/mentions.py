"""The values that a file's sentences refer to, found in its text with line and column."""

from __future__ import annotations

import re
from typing import NamedTuple

_MENTION = re.compile(
    r"\{\{\s*([a-z0-9]+(?:-[a-z0-9]+)*(?:\.[a-z0-9]+(?:-[a-z0-9]+)*)+)(?:\s+in\s+([^{}]*?))?\s*\}\}"
)


class Mention(NamedTuple):
    """A value that is referred to, the unit it is asked in, and (line, column) from 1."""

    figure: str
    unit: str
    mark: tuple[int, int]


def mentions_in(text: str) -> tuple[Mention, ...]:
    """Return every reference of a file's text, but for those in comments."""
    if "{{" not in text:
        return ()
    found = []
    line, begin = 1, 0
    for match in _MENTION.finditer(text):
        start = match.start()
        line += text.count("\n", begin, start)
        begin = max(begin, text.rfind("\n", begin, start) + 1)
        if not text[begin:start].lstrip().startswith("#"):
            unit = " ".join((match.group(2) or "").split())
            found.append(Mention(match.group(1), unit, (line, start - begin + 1)))
    return tuple(found)
