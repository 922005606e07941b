"""Sheets of paper, asked for by name, as one file."""

from __future__ import annotations

import difflib
from collections.abc import Iterable
from pathlib import Path
from typing import Final

from basinside import files
from basinside.pipeline.build import Clinic, Theme, open_theme, read_clinic
from basinside.pipeline.refusal import RefusedError
from basinside.render.print_file import all_prints, described, print_file
from basinside.render.views.prints.catalogue import Print

ALL: Final = "all"
CONTENT: Final = "content/"
"""Where what is printed is written; a question that is wrong stops no paper."""
OWN_MARK: Final = b"style-src &#39;sha256-"
"""In the head of each print file, and of no page of a handbook."""
HEAD_BYTES: Final = 1000


def printable_list(root: Path) -> tuple[tuple[str, str], ...]:
    """Return (name, words) of every sheet that a clinic's handbook has.

    Raises:
        FolderError: when the folder cannot be read.
        RefusedError: when a problem stops the handbook.
    """
    clinic, theme = _sound(root)
    return tuple((each.name, described(each)) for each in _all(clinic, theme))


def write_prints(root: Path, kinds: Iterable[str], into: Path) -> tuple[str, ...]:
    """Write any choice of sheets into one file, and return their names.

    Args:
        root: the clinic's folder.
        kinds: kinds or names of sheets, or ``all``.
        into: the file; prints that lie there are replaced, and nothing else is.

    Raises:
        FolderError: when the folder cannot be read or the file cannot be written.
        RefusedError: when a name means no sheet, the file does not end in .html or holds
            something else, or a problem stops the handbook.
    """
    if into.suffix.lower() not in {".html", ".htm"}:
        raise RefusedError(f"{into}: a print file ends in .html; name another with --into.")
    before = files.read_if_there(into)
    if before and OWN_MARK not in before[:HEAD_BYTES]:
        raise RefusedError(f"{into}: something else lies there; name another file with --into.")
    clinic, theme = _sound(root)
    known = _all(clinic, theme)
    chosen: dict[str, Print] = {}
    for kind in kinds:
        found = [each for each in known if kind in {ALL, each.kind, each.name}]
        if not found:
            raise RefusedError(_unknown(kind, known))
        chosen.update({each.name: each for each in found})
    text = print_file(clinic.content, clinic.derived, theme, chosen.values())
    files.write_file(into, text)
    return tuple(chosen)


def _all(clinic: Clinic, theme: Theme) -> tuple[Print, ...]:
    return all_prints(clinic.content, clinic.derived, theme)


def _sound(root: Path) -> tuple[Clinic, Theme]:
    clinic = read_clinic(root)
    if clinic.content.handbook is None:
        raise RefusedError(f"{root}: there is no handbook here to print for.")
    if any(each.stops and each.place.file.startswith(CONTENT) for each in clinic.problems):
        raise RefusedError(
            "Nothing was printed: a problem stops this handbook. “basinside check” says which."
        )
    return clinic, open_theme()


def _unknown(kind: str, known: tuple[Print, ...]) -> str:
    names = dict.fromkeys([*(each.kind for each in known), *(each.name for each in known)])
    near = difflib.get_close_matches(kind, names, 1)
    more = f"Did you mean “{near[0]}”?" if near else "“basinside print --list” shows all of them."
    return f"There is no print “{kind}” in this handbook. {more}"
