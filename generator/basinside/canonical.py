"""Canonical JSON (RFC 8785) and the digests that stand on it.

Two programs that hold the same value write the same bytes. Floats are refused, because their
text differs between languages in ways that nobody sees; everything else follows RFC 8785: keys
sorted by UTF-16 code units, the fewest escapes, UTF-8, no change to the letters.
"""

from __future__ import annotations

import base64
import binascii
import hashlib
import json
import re
from collections.abc import Mapping

from basinside.constants import LARGEST_INTEGER

_BASE64URL = re.compile(r"[A-Za-z0-9_-]*\Z")


def canonical_bytes(value: object) -> bytes:
    """Return the RFC 8785 bytes of a value.

    Takes strings, integers of at most 2^53 - 1 either way, booleans, ``None``, lists and tuples,
    and mappings with string keys. Raises ``ValueError``, naming the place, for everything else:
    floats, larger integers, half a surrogate pair, other keys, nesting too deep to walk.
    """
    out: list[str] = []
    try:
        _write(value, out)
    except _RefusedError as refused:
        place = "/".join(str(key) for key in reversed(refused.path))
        raise ValueError(f"{place or 'the value'} {refused.why}") from None
    except RecursionError:
        raise ValueError("the value is nested too deep to be written as canonical JSON") from None
    return "".join(out).encode("utf-8")


def digest(name: str, value: object) -> str:
    """Return ``NAME-v1:`` and the base64url SHA-256 of the value's canonical bytes."""
    return f"{name}-v1:{base64url(hashlib.sha256(canonical_bytes(value)).digest())}"


def base64url(data: bytes) -> str:
    """Return bytes as base64url text without padding (RFC 4648, section 5)."""
    return base64.urlsafe_b64encode(data).rstrip(b"=").decode("ascii")


def from_base64url(text: str) -> bytes:
    """Return the bytes of base64url text without padding.

    Raises ``ValueError`` for padding, other letters, and for a spelling that another spelling of
    the same bytes would write differently.
    """
    if not _BASE64URL.match(text):
        raise ValueError("not base64url text without padding")
    try:
        data = base64.urlsafe_b64decode(text + "=" * (-len(text) % 4))
    except binascii.Error:
        raise ValueError("not base64url text: its length cannot be") from None
    if base64url(data) != text:
        raise ValueError("not base64url text: its last letter carries stray bits")
    return data


class _RefusedError(Exception):
    """A value that has no canonical form, and the keys that lead to it, innermost first."""

    def __init__(self, why: str) -> None:
        super().__init__(why)
        self.why = why
        self.path: list[object] = []


def _write(value: object, out: list[str]) -> None:
    if value is None:
        out.append("null")
    elif value is True:
        out.append("true")
    elif value is False:
        out.append("false")
    elif isinstance(value, str):
        out.append(_string(value))
    elif isinstance(value, int):
        if abs(value) > LARGEST_INTEGER:
            raise _RefusedError("is an integer beyond 2^53 - 1")
        out.append(str(int(value)))
    elif isinstance(value, Mapping):
        _write_object(value, out)
    elif isinstance(value, list | tuple):
        out.append("[")
        for index, each in enumerate(value):
            if index:
                out.append(",")
            _write_at(index, each, out)
        out.append("]")
    else:
        kind = type(value).__name__
        raise _RefusedError(f"is of a kind that canonical JSON does not take: {kind}")


def _write_object(value: Mapping[object, object], out: list[str]) -> None:
    order: list[tuple[bytes, str]] = []
    for key in value:
        if not isinstance(key, str):
            raise _RefusedError(f"has a key that is not text: {key!r}")
        _string(key)
        order.append((key.encode("utf-16-be"), key))
    out.append("{")
    for index, (_, key) in enumerate(sorted(order)):
        if index:
            out.append(",")
        out.append(_string(key))
        out.append(":")
        _write_at(key, value[key], out)
    out.append("}")


def _write_at(key: object, value: object, out: list[str]) -> None:
    try:
        _write(value, out)
    except _RefusedError as refused:
        refused.path.append(key)
        raise


def _string(value: str) -> str:
    try:
        value.encode("utf-8")
    except UnicodeEncodeError:
        raise _RefusedError("holds half of a surrogate pair") from None
    # With ensure_ascii off, json writes exactly the escapes that RFC 8785 asks for.
    return json.dumps(str(value), ensure_ascii=False)
