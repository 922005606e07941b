"""The small valid clinic of tests/check/base, and what checking it or a patched one gives."""

import json
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from functools import cache
from pathlib import Path
from typing import Any

from basinside.check.run import check
from basinside.derive.editions import edition_document
from basinside.derive.everything import derive
from basinside.load.content import load
from basinside.load.marked_yaml import locate
from basinside.model.content import Content
from basinside.model.derived import Derived
from basinside.problem import Place, Placed, Problem

BASE = Path(__file__).parent / "base"
CLOSED = "content/editions/2026.1.json"


@cache
def base_files() -> dict[str, bytes]:
    """Return the files of the valid clinic; not to be changed."""
    return {
        path.relative_to(BASE).as_posix(): path.read_bytes()
        for path in sorted(BASE.rglob("*"))
        if path.is_file()
    }


def closed(files: Mapping[str, bytes]) -> bytes:
    """Return the edition of a clinic's files as it would be closed."""
    return json.dumps(edition_document(load(files)[0]), ensure_ascii=False).encode()


@cache
def closed_edition() -> bytes:
    """Return the valid clinic's edition as it would be closed."""
    return closed(base_files())


@dataclass(frozen=True, kw_only=True)
class Looked:
    """A clinic that was loaded and checked."""

    content: Content
    derived: Derived
    problems: list[Problem]
    lines: list[str]


def look_at(files: Mapping[str, bytes], today: date | None = None) -> Looked:
    """Load and check files, and print each problem as an author would see it."""
    content, problems = load(files)
    derived = derive(content)
    problems = [*problems, *check(content, derived, today)]
    by_file: dict[str, list[Place]] = {}
    for problem in problems:
        by_file.setdefault(problem.place.file, []).append(problem.place)
    marks: dict[Place, tuple[int, int]] = {}
    for file, places in by_file.items():
        marks.update(locate(files.get(file, b""), places))
    placed = [
        Placed(problem=each, line=marks[each.place][0], column=marks[each.place][1])
        for each in problems
    ]
    lines = [str(each) for each in sorted(placed, key=lambda each: each.order)]
    return Looked(content=content, derived=derived, problems=problems, lines=lines)


def patched(case: Mapping[str, Any]) -> dict[str, bytes]:
    """Return the valid clinic's files with one case's changes.

    Each of `replace` names a file, words that stand in it exactly once, and the words instead;
    `files` are whole files; `closed` adds the valid clinic as a closed edition.
    """
    files = dict(base_files())
    for change in case.get("replace", ()):
        file, old = change["file"], change["old"]
        text = files[file].decode()
        assert text.count(old) == 1, f"{file}: {old!r} stands there {text.count(old)} times"
        files[file] = text.replace(old, change["new"]).encode()
    files.update({file: text.encode() for file, text in case.get("files", {}).items()})
    if case.get("closed"):
        files[CLOSED] = closed_edition()
    return files
