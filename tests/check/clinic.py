"""The small valid clinic of tests/check/base, and what checking it or a patched one gives."""

import json
from collections.abc import Callable, Mapping
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


def files_under(root: Path) -> dict[str, bytes]:
    """Return the files of a clinic by their paths in it."""
    return {
        path.relative_to(root).as_posix(): path.read_bytes()
        for path in sorted(root.rglob("*"))
        if path.is_file()
    }


@cache
def base_files() -> dict[str, bytes]:
    """Return the files of the valid clinic; not to be changed."""
    return files_under(BASE)


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


def look_at(files: Mapping[str, bytes], today: date | None = None, rules: bool = True) -> Looked:
    """Load files, check them unless no rule is asked, and print each problem as authors see it."""
    content, problems = load(files)
    derived = derive(content)
    if rules:
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
    """Return the valid clinic's files with one case's changes."""
    return changed_by(case, base_files(), closed_edition)


def changed_by(
    case: Mapping[str, Any], base: Mapping[str, bytes], edition: Callable[[], bytes]
) -> dict[str, bytes]:
    """Return a clinic's files with one case's changes.

    Each of `replace` names a file, words that stand in it exactly once, and the words instead;
    `files` are whole files; `closed` adds the clinic as a closed edition.
    """
    files = dict(base)
    for change in case.get("replace", ()):
        file, old = change["file"], change["old"]
        text = files[file].decode()
        assert text.count(old) == 1, f"{file}: {old!r} stands there {text.count(old)} times"
        files[file] = text.replace(old, change["new"]).encode()
    files.update({file: text.encode() for file, text in case.get("files", {}).items()})
    if case.get("closed"):
        files[CLOSED] = edition()
    return files
