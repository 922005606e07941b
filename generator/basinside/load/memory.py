"""What was read of each file, kept from one reading to the next."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Mapping
from typing import Any, NamedTuple

from basinside.load.mentions import Mention
from basinside.load.named import Named
from basinside.problem import Problem


class Read(NamedTuple):
    """What was read of one file."""

    entry: Any
    problems: tuple[Problem, ...]
    mentions: tuple[Mention, ...] = ()
    named: tuple[Named, ...] = ()


class Memory:
    """What was read of each file last time, by the bytes it was read from."""

    def __init__(self) -> None:
        self._known: dict[tuple[str, bytes], Read] = {}
        self._used: set[tuple[str, bytes]] = set()

    def recall(self, file: str, raw: bytes) -> tuple[tuple[str, bytes], Read | None]:
        """Return the key of a file's bytes and what was read from them, if known."""
        key = (file, hashlib.sha256(raw).digest())
        self._used.add(key)
        return key, self._known.get(key)

    def recall_all(
        self, files: Mapping[str, bytes], names: Iterable[str]
    ) -> tuple[tuple[str, bytes], Read | None]:
        """Return the key of what several files make together, and that, if known."""
        together = hashlib.sha256()
        for name in sorted(names):
            together.update(name.encode() + b"\0" + hashlib.sha256(files[name]).digest())
        key = ("", together.digest())
        self._used.add(key)
        return key, self._known.get(key)

    def keep(self, key: tuple[str, bytes], read: Read) -> None:
        """Remember what was read."""
        self._known[key] = read

    def forget_unused(self) -> None:
        """Drop what the last reading did not ask for."""
        self._known = {key: read for key, read in self._known.items() if key in self._used}
        self._used = set()
