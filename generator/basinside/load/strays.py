"""Files that lie or are named where nothing is read, told by what stands in them."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Final, NamedTuple

from basinside.problem import Level, Place, Problem

HOMES: Final[Mapping[str, tuple[str, str]]] = {
    "procedure": ("a procedure", "content/procedures/"),
    "route": ("a route", "content/routes/"),
    "observation": ("observation lines", "quizzes/observations/"),
    "standard": ("ratings of judges", "quizzes/standards/"),
    "assessment": ("an assessment", "quizzes/assessments/"),
    "instrument": ("an instrument", "content/instruments/"),
    "agent": ("a chemical", "content/agents/"),
    "topic": ("questions", "quizzes/questions/"),
    "handbook": ("the handbook's card", "content/handbook.yaml"),
    "sources": ("sources", "content/sources.yaml"),
    "equipment": ("equipment", "content/equipment.yaml"),
    "incidents": ("incidents", "content/incidents.yaml"),
    "figures": ("values", "content/figures/"),
    "choices": ("choices", "content/figures/"),
}
"""First-level key that tells what a file holds -> that in words, and where it belongs.

A procedure names an instrument and a route, a route a chemical: the first key found decides.
"""

_MARK: Final = b"\xef\xbb\xbf"
"""The byte order mark that some editors put before everything."""
_ENDING = re.compile(r"\.ya?ml(?:\.txt)?\Z", re.IGNORECASE)


class Stray(NamedTuple):
    """What is wrong with a file's place, and the file that it would be in its right place."""

    problem: Problem
    meant: str


def stray(file: str, raw: bytes) -> Stray | None:
    """Return what is wrong with a file that is not read, or None when it is no file of ours."""
    if not _ENDING.search(file):
        return None
    held = _held(raw)
    folder, _, name = file.rpartition("/")
    right_name = _ENDING.sub(".yaml", name)
    if held is None:
        if right_name == name:
            places = ", ".join(dict.fromkeys(home for _, home in HOMES.values()))
            said = f"this file lies where nothing is read; move it into one of {places}"
        else:
            said = f"this file is not read because of its name; name it {right_name}"
        return Stray(_problem(file, said), f"{folder}/{right_name}")
    what, home = held
    meant = home if home.endswith(".yaml") else home + right_name
    if not home.endswith(".yaml") and f"{folder}/".startswith(home):
        said = f"this file is not read because of its name; name it {right_name}"
        return Stray(_problem(file, said), f"{folder}/{right_name}")
    said = f"this file holds {what} and lies where nothing is read; name it {meant}"
    return Stray(_problem(file, said), meant)


def misfiled(file: str, raw: bytes, own: str) -> Stray | None:
    """Return what is wrong with a file that lies among files of another kind.

    Args:
        file: where it lies.
        raw: what it holds.
        own: the folder, or the file, whose kind it is read as.
    """
    held = _held(raw)
    if held is None or held[1] == own:
        return None
    what, home = held
    meant = home if home.endswith(".yaml") else home + file.rpartition("/")[2]
    said = f"this file holds {what}, which belongs in {home}; move it there"
    return Stray(_problem(file, said), meant)


def _held(raw: bytes) -> tuple[str, str] | None:
    """Return what a file holds by its first-level keys, if they tell."""
    lines = b"\n" + raw.removeprefix(_MARK).replace(b"\r", b"\n")
    return next((home for key, home in HOMES.items() if _begins_a_line(lines, key)), None)


def _begins_a_line(lines: bytes, key: str) -> bool:
    """Whether a key stands at the margin; found by plain search, since every file is asked."""
    word = b"\n" + key.encode() + b":"
    at = lines.find(word)
    while at >= 0:
        after = lines[at + len(word) : at + len(word) + 1]
        if not after or after.isspace():
            return True
        at = lines.find(word, at + 1)
    return False


def _problem(file: str, message: str) -> Problem:
    return Problem(place=Place(file), rule="file-misplaced", level=Level.NEVER, message=message)
