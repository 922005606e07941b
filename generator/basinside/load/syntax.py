"""What stops YAML's reader, in words that an author knows, with the mend and the place to look."""

from __future__ import annotations

import re
from typing import Any, Final, NamedTuple

BLOCK: Final = "put the sentence on the next line after `>-`"
BRACES_NEED_QUOTES: Final = (
    "a sentence that begins with {{ must stand in quotes, or on the next line after `>-`"
)

_BREAK = re.compile(r"\r\n|[\n\r\x85\u2028\u2029]")
_KEY = r"\s*(?:- +)*[A-Za-z0-9_.-]+"
_VALUE = re.compile(rf"{_KEY}: +|\s*(?:- +)+")
_TAB_FIRST = re.compile(r" *\t")
_FALSE_SPACE_FIRST = re.compile(r" *[\u00a0\u2007\u202f\u3000]")
_NO_SPACE_AFTER_COLON = re.compile(r"\s*(?:- +)*[a-z_]+:(?!//)[^\s:]")
_NO_SPACE_AFTER_DASH = re.compile(r"\s*-[a-z_]+:(?:\s|\Z)")
_ONLY_A_KEY = re.compile(rf"{_KEY}\Z")
_LOOK_BACK = 3  # lines above the one where the reader gave up


class Fault(NamedTuple):
    """What is wrong, and (line, column) from 1."""

    message: str
    mark: tuple[int, int]


class _Line(NamedTuple):
    number: int
    text: str

    def fault(self, message: str, column: int | None = None) -> Fault:
        first = len(self.text) - len(self.text.lstrip()) + 1
        return Fault(message, (self.number, column or first))

    @property
    def value_at(self) -> int:
        """The column, from 0, where the value on this line begins."""
        found = _VALUE.match(self.text)
        return found.end() if found else len(self.text) - len(self.text.lstrip())


def explain(text: str, error: Any) -> Fault:
    """Return what a ``yaml.MarkedYAMLError`` about a text means to an author."""
    lines = [_Line(n + 1, each) for n, each in enumerate(_BREAK.split(text))]
    mark = error.problem_mark or error.context_mark
    at = min(mark.line, len(lines) - 1) if mark else 0
    column = mark.column + 1 if mark else 1
    said, context = error.problem or "", error.context or ""
    opened = error.context_mark
    near = [lines[n] for n in range(at, max(-1, at - _LOOK_BACK - 1), -1) if lines[n].text.strip()]
    return (
        _unclosed_quote(said, context, opened)
        or _spacing(near)
        or _first_sign(lines[at])
        or _unclosed_bracket(context, opened, lines)
        or _key_or_sentence(said, lines, at, column)
        or Fault(_otherwise(said), (at + 1, column))
    )


def _unclosed_quote(said: str, context: str, opened: Any) -> Fault | None:
    if "quoted scalar" not in context or opened is None:
        return None
    mark = (opened.line + 1, opened.column + 1)
    if "escape" in said or "hexdecimal" in said:
        return Fault(f"a backslash may not stand inside double quotes; {BLOCK}", mark)
    return Fault(f"the quote that begins here is not closed; close it, or {BLOCK}", mark)


def _spacing(near: list[_Line]) -> Fault | None:
    for line in near:
        if _TAB_FIRST.match(line.text):
            return line.fault("a tab cannot indent YAML; use spaces", line.text.index("\t") + 1)
        if _FALSE_SPACE_FIRST.match(line.text):
            column = len(line.text) - len(line.text.lstrip(" ")) + 1
            return line.fault(
                "this line begins with a space that YAML does not know (a pasted no-break space);"
                " use plain spaces",
                column,
            )
        if _NO_SPACE_AFTER_DASH.match(line.text):
            return line.fault("write a space after the dash that begins an entry")
        if _NO_SPACE_AFTER_COLON.match(line.text):
            key = line.text.split(":", 1)[0].strip(" -")
            return line.fault(f"write a space after the colon of “{key}:”")
    return None


def _first_sign(line: _Line) -> Fault | None:
    """Return what is wrong when the value on a line begins with a sign that YAML keeps."""
    column, value = line.value_at + 1, line.text[line.value_at :].rstrip()
    sign = value[:1]
    if value.startswith("{{"):
        return line.fault(BRACES_NEED_QUOTES, column)
    if sign and sign in "\"'":
        if value.find(sign, 1) in {-1, len(value) - 1}:
            return None
        return line.fault(f"what begins with {sign} ends at the next {sign}; {BLOCK}", column)
    if sign and sign in "[{":
        closed = value.find({"[": "]", "{": "}"}[sign])
        if closed == -1 or not value[closed + 1 :].strip() or value[closed + 1] in ",]}":
            return None
        message = f"what begins with {sign} ends at the next {value[closed]}; {BLOCK}"
        return line.fault(message, column)
    if sign and (sign in "*&%@`|>!" or value[:2] in {"- ", "? "}):
        if sign in "|>" and len(value.split(" ", 1)[0]) == len(value):
            return None
        return line.fault(f"a sentence cannot begin with “{sign}”; {BLOCK}", column)
    return None


def _unclosed_bracket(context: str, opened: Any, lines: list[_Line]) -> Fault | None:
    if "flow" not in context or opened is None or opened.line >= len(lines):
        return None
    sign = lines[opened.line].text[opened.column : opened.column + 1]
    if sign not in {"[", "{"}:
        return None
    kind = "bracket" if sign == "[" else "brace"
    message = (
        f"the {kind} {sign} that opens here is not closed before something else begins; close it,"
        f" or write one {'entry' if sign == '[' else 'key'} to a line"
    )
    return Fault(message, (opened.line + 1, opened.column + 1))


def _key_or_sentence(said: str, lines: list[_Line], at: int, column: int) -> Fault | None:
    line = lines[at]
    if "mapping values are not allowed" in said:
        key = line.text[: column - 1]
        if at and _ONLY_A_KEY.match(key) and lines[at - 1].text.strip():
            return line.fault(
                f"“{key.strip(' -')}:” is indented deeper than the line above, so both read as one"
                f" sentence; line it up with its neighbours, or {BLOCK}"
            )
        return line.fault(f"a sentence with “: ” in it looks like a key; {BLOCK}", column)
    if "expected ':'" in said:
        above = next(
            (
                each
                for each in reversed(lines[: at + 1])
                if each.text.strip() and not re.search(r":(\s|\Z)", each.text)
            ),
            line,
        )
        return above.fault(
            "this line has no key; indent it deeper if it goes on with the line above, or write"
            " its key and a colon"
        )
    return None


def _otherwise(said: str) -> str:
    if "alias" in said or "anchor" in said:
        return f"a sentence cannot begin with “*” or “&”; {BLOCK}"
    if "nesting" in said:
        return "this is nested far too deep"
    if "another document" in said or "document start" in said or "document end" in said:
        return "“---” begins a second document; one file holds one entry"
    if "indent" in said or "expected" in said or "not allowed in this context" in said:
        return "this line is not indented as the lines beside it; line it up with them"
    return f"YAML cannot read this: {said or 'it is no YAML'}"
