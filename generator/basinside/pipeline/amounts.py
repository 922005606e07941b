"""What a calculator answers at the prompt, for the clinic of a folder."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Any

from basinside import files
from basinside.derive.amounts import answer
from basinside.derive.everything import derive
from basinside.load.content import load
from basinside.model.amounts import AmountKind, Ground, Typed
from basinside.problem import any_stop
from basinside.render.amount_words import answer_lines

__all__ = ["Answered", "Place", "ask", "open_place"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """What the calculators stand on; ``sound`` when nothing in the folder stops a build."""

    ground: Ground
    sound: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Answered:
    """An answer as lines for people and as data for a tool; ``holds`` when nothing was refused."""

    lines: tuple[str, ...]
    data: dict[str, Any]
    holds: bool


def open_place(root: Path) -> Place:
    """Read what a clinic's calculators stand on.

    Raises:
        FolderError: when the folder cannot be read or holds no handbook.
    """
    content, problems = load(files.read_authored(root))
    if content.handbook is None:
        raise files.FolderError(f"{root}: there is no handbook here; name its folder")
    return Place(ground=derive(content).amounts.ground, sound=not any_stop(problems))


def ask(place: Place, kind: AmountKind, typed: Typed) -> Answered:
    """Ask a calculator; ``typed`` are the fields of its form as somebody typed them."""
    found = answer(place.ground, kind, typed)
    return Answered(lines=tuple(answer_lines(found)), data=found.data(), holds=found.holds)
