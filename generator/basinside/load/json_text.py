"""Read JSON that someone handed us, strictly, and say in one line what is wrong with it.

Files travel on sticks and by mail, and some are made to deceive. What two readers could
understand differently is refused: repeated keys, floats, whole numbers that not every reader
keeps, half a surrogate pair; and so is what only costs memory: too large, nested too deep.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from typing import Final

from basinside.constants import LARGEST_INTEGER

NO_FILE_OF_OURS: Final = "This is no file of this program, or it was cut short"
DEEPEST: Final = 64
"""Levels of nesting; our deepest own file has nine (our own cap)."""
LARGEST_FILE: Final = 32 * 1024 * 1024
"""Octets of a file when the caller names no other cap (our own cap)."""

_TOKEN = re.compile(
    r'(?P<text>"(?:[^"\\]|\\.)*")|(?P<number>-?[0-9][0-9.eE+-]*)|(?P<word>-?[A-Za-z]+)|(?P<mark>[\[\]{}:,])',
    re.DOTALL,
)


class JsonTextError(Exception):
    """A text that is not the JSON we read, with the place where a reader can look."""

    def __init__(self, message: str, *, name: str, line: int = 1, column: int = 1) -> None:
        super().__init__(f"{name}:{line}:{column}: {message}")
        self.message = message
        self.name = name
        self.line = line
        self.column = column


def read_json(text: bytes, name: str, max_bytes: int = LARGEST_FILE) -> object:
    """Return the value of a JSON text.

    ``name`` is how messages call the file; ``max_bytes`` is the size in octets above which the
    text is not even looked at. A byte order mark is tolerated. Raises ``JsonTextError``, and
    nothing else, whatever the bytes are.
    """
    if len(text) > max_bytes:
        raise JsonTextError(f"The file is larger than {max_bytes} bytes.", name=name)
    try:
        plain = text.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        before = text[: error.start].decode("utf-8", "replace")
        raise _at(before, len(before), name, "The file is not UTF-8 text.") from None
    try:
        value: object = json.loads(
            plain, parse_int=_whole, parse_float=_nothing, parse_constant=_nothing
        )
    except json.JSONDecodeError as error:
        # json numbers its lines as _at does, but words its messages for programmers.
        raise _at(plain, error.pos, name, f"{NO_FILE_OF_OURS} ({error.msg.lower()}).") from None
    except RecursionError:
        raise JsonTextError(f"Nested deeper than {DEEPEST} levels.", name=name) from None
    _refuse_what_differs(plain, name)
    return value


def _refuse_what_differs(plain: str, name: str) -> None:
    """Walk the tokens of a text that is known to be JSON."""
    open_keys: list[set[str] | None] = []
    last_text: tuple[int, str] | None = None
    for found in _tokens(plain):
        mark = found["mark"]
        if found["text"] is not None:
            last_text = (found.start(), _plain_text(found["text"], plain, found.start(), name))
        elif found["number"] is not None:
            _refuse_number(found["number"], plain, found.start(), name)
        elif found["word"] in {"NaN", "Infinity", "-Infinity"}:
            raise _at(plain, found.start(), name, f"{found['word']} is not JSON.")
        elif mark in {"{", "["}:
            open_keys.append(set() if mark == "{" else None)
            if len(open_keys) > DEEPEST:
                raise _at(plain, found.start(), name, f"Nested deeper than {DEEPEST} levels.")
        elif mark in {"}", "]"}:
            open_keys.pop()
        elif mark == ":" and last_text is not None:
            keys = open_keys[-1]
            if keys is not None:
                start, key = last_text
                if key in keys:
                    raise _at(plain, start, name, f'The key "{_short(key)}" stands here twice.')
                keys.add(key)


def _tokens(plain: str) -> Iterator[re.Match[str]]:
    return _TOKEN.finditer(plain)


def _plain_text(token: str, plain: str, start: int, name: str) -> str:
    if "\\" not in token:
        return token[1:-1]
    value: str = json.loads(token)
    try:
        value.encode("utf-8")
    except UnicodeEncodeError:
        raise _at(plain, start, name, "This text holds half of a surrogate pair.") from None
    return value


def _refuse_number(token: str, plain: str, start: int, name: str) -> None:
    if not token.lstrip("-").isdigit():
        raise _at(
            plain, start, name, f"{_short(token)} is not a whole number; our files hold no others."
        )
    if len(token) > len(str(-LARGEST_INTEGER)) or abs(int(token)) > LARGEST_INTEGER:
        raise _at(plain, start, name, f"{_short(token)} is beyond 2^53 - 1.")


def _whole(token: str) -> int:
    # A longer one is refused by the walk; Python would raise on thousands of digits.
    return int(token) if len(token) <= len(str(-LARGEST_INTEGER)) else 0


def _nothing(_: str) -> None:
    return None


def _short(text: str) -> str:
    return text if len(text) <= 40 else text[:39] + "…"


def _at(plain: str, position: int, name: str, message: str) -> JsonTextError:
    line = plain.count("\n", 0, position) + 1
    column = position - (plain.rfind("\n", 0, position) + 1) + 1
    return JsonTextError(message, name=name, line=line, column=column)
