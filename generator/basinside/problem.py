"""The one value that every room returns when something an author wrote is wrong.

A problem knows its place as (file, path in the file); the line and the column are looked up in
the file only when the problem is printed, so that models stay small and caches lose nothing.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum
from typing import Final, NamedTuple

LONGEST_MESSAGE: Final = 600
"""Characters of one message; authors' words inside it are cut there (our own cap)."""


class Level(StrEnum):
    """How grave a problem is.

    ``info`` is shown by ``--all`` only, ``warn`` prints, ``stop`` fails the build and can be waived
    by name, ``never`` cannot be waived.
    """

    INFO = "info"
    WARN = "warn"
    STOP = "stop"
    NEVER = "never"


class Place(NamedTuple):
    """Where something stands: a file, and the keys and indices that lead to it inside the file.

    ``mark`` is (line, column), both from 1, when the place is known from the text itself.
    """

    file: str
    path: tuple[str | int, ...] = ()
    mark: tuple[int, int] | None = None

    def at(self, *more: str | int) -> Place:
        """Return the place below this one."""
        return Place(self.file, self.path + more)


@dataclass(frozen=True, slots=True, kw_only=True)
class Problem:
    """One thing that is wrong, in the clinic's words, with its mend when there is one."""

    place: Place
    rule: str
    level: Level
    message: str
    hint: str = ""
    waived_by: str = ""

    @property
    def stops(self) -> bool:
        """Whether a build may not go on with this problem in it."""
        return self.level is Level.NEVER or (self.level is Level.STOP and not self.waived_by)


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """A problem with the line and column that a reader can go to (both from 1)."""

    problem: Problem
    line: int
    column: int

    @property
    def order(self) -> tuple[str, int, int, str, str]:
        """The order in which problems are printed: by place, then by rule."""
        found = self.problem
        return (found.place.file, self.line, self.column, found.rule, found.message)

    def __str__(self) -> str:
        found = self.problem
        text = f"{found.place.file}:{self.line}:{self.column}: {found.message}"
        if found.hint:
            text += f". {found.hint}"
        text += f" [{found.rule}]"
        if found.waived_by:
            text += f" ({found.waived_by})"
        return " ".join(_printable(text).split())


def any_stop(problems: Iterable[Problem]) -> bool:
    """Return whether one of the problems stops the build."""
    return any(each.stops for each in problems)


def one_line(text: str) -> str:
    """Return words fit for one line of a terminal: no line breaks, nothing that does not print."""
    flat = " ".join(_printable(text).split())
    return flat if len(flat) <= LONGEST_MESSAGE else f"{flat[: LONGEST_MESSAGE - 1]}…"


def _printable(text: str) -> str:
    return (
        text
        if text.isprintable()
        else "".join(each if each.isprintable() else " " for each in text)
    )
