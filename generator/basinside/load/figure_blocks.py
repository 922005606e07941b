"""What must agree inside a value: it is worked out from one thing, and from all that it needs."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.model.figure import FigureFile, WorkedOut
from basinside.problem import Level, Place, Problem

_FOLLOWS: Final = ("of", "boils", "gauge_for", "reached_by")


def figure_blocks(file: FigureFile) -> Iterator[Problem]:
    """Yield what does not agree inside the values of a file."""
    for figure in file.figures.values():
        if figure.worked_out is not None:
            yield from _worked_out(figure.worked_out)


def _worked_out(worked: WorkedOut) -> Iterator[Problem]:
    mixed = {"to": worked.to, "in": worked.in_}
    beside = [key for key, value in mixed.items() if value is not None]
    if worked.of is not None and worked.to is None:
        said = "“to” is missing here; an amount “of” a chemical is for a strength"
        yield _problem(worked.place, "missing-key", said)
    if worked.of is None and beside:
        said = f"“of” is missing here; “{beside[0]}” goes with a chemical"
        yield _problem(worked.place.at(beside[0]), "missing-key", said)
    else:
        yield from _one_of(worked)


def _one_of(worked: WorkedOut) -> Iterator[Problem]:
    written = [key for key in _FOLLOWS if getattr(worked, key) is not None]
    if not written:
        offered = f"{', '.join(f'“{key}”' for key in _FOLLOWS[:-1])} or “{_FOLLOWS[-1]}”"
        yield _problem(worked.place, "missing-key", f"write {offered} here")
    for key in written[1:]:
        said = f"“{key}” and “{written[0]}” cannot stand together; keep one"
        yield _problem(worked.place.at(key), "bad-value", said)


def _problem(place: Place, rule: str, message: str) -> Problem:
    return Problem(place=place, rule=rule, level=Level.NEVER, message=message)
