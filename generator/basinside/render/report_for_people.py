"""Problems grouped by file, as a person reads them at a terminal; colours are named, not made.

Each line is made of runs; who prints it knows whether there are colours.
"""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Sequence
from itertools import groupby
from typing import Final, Literal, NamedTuple

from basinside.problem import Level, Placed, one_line
from basinside.render.wording import _, n_

Ink = Literal["plain", "file", "place", "stop", "warn", "info", "waived", "hint", "rule"]
NARROWEST: Final = 40
WIDEST: Final = 110
"""Signs of a line; longer ones are not read well (common practice)."""


class Run(NamedTuple):
    """Words of a line, and what they are."""

    ink: Ink
    text: str


Line = tuple[Run, ...]


def grouped_lines(
    placed: Iterable[Placed], *, everything: bool = False, width: int = 80
) -> list[Line]:
    """Return the problems below a heading for each file, sorted by place.

    Args:
        placed: the problems.
        everything: whether to show what is only for information too.
        width: signs of a line of the terminal.
    """
    shown = sorted(
        (each for each in placed if everything or each.problem.level is not Level.INFO),
        key=lambda each: each.order,
    )
    width = max(NARROWEST, min(width, WIDEST))
    lines: list[Line] = []
    for file, group in groupby(shown, key=lambda each: each.problem.place.file):
        several = list(group)
        if lines:
            lines.append(())
        lines.append((Run("file", one_line(file)),))
        places = [f"{each.line}:{each.column}" for each in several]
        room = max(map(len, places))
        for place, each in zip(places, several, strict=True):
            lines.extend(_entry(each, place.rjust(room), width))
    return lines


def hidden_line(placed: Sequence[Placed]) -> str:
    """Return how much is only for information and so not shown; nothing when there is none."""
    hidden = sum(each.problem.level is Level.INFO for each in placed)
    if not hidden:
        return ""
    return n_(
        "1 more for information; --all shows it.",
        "{n} more for information; --all shows them.",
        hidden,
    )


def state_word(placed: Placed) -> tuple[Ink, str]:
    """Return the state of a problem: a word, which is also its ink."""
    problem = placed.problem
    if problem.waived_by:
        return "waived", _("waived")
    if problem.level is Level.WARN:
        return "warn", _("warns")
    if problem.level is Level.INFO:
        return "info", _("info")
    return "stop", _("stops")


def _entry(placed: Placed, place: str, width: int) -> list[Line]:
    problem = placed.problem
    ink, word = state_word(placed)
    before = f"  {place}  "
    state = word.ljust(6)
    indent = " " * (len(before) + len(state) + 1)
    first, *rest = _wrapped(one_line(problem.message), width - len(indent))
    lines: list[Line] = [
        (Run("place", before), Run(ink, state), Run("plain", f" {first}")),
        *((Run("plain", indent + each),) for each in rest),
    ]
    for said, its_ink in ((problem.hint, "hint"), (problem.waived_by, "waived")):
        for each in _wrapped(one_line(said), width - len(indent)) if said else ():
            lines.append((Run(its_ink, indent + each),))  # type: ignore[arg-type]
    lines.append((Run("rule", f"{indent}[{problem.rule}]"),))
    return lines


def _wrapped(text: str, width: int) -> list[str]:
    return textwrap.wrap(text, max(20, width), break_on_hyphens=False) or [""]
