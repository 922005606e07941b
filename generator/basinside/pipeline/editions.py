"""Close an edition, and compare two: an edition id, its file, a folder or a git revision."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from basinside import files
from basinside.derive.editions import (
    EDITION_FORMAT,
    compare,
    differs,
    edition_document,
    scopes_to_refresh,
)
from basinside.load.content import load
from basinside.model.derived import Change
from basinside.pipeline.forms import sound_clinic
from basinside.pipeline.machine_files import read_object
from basinside.pipeline.refusal import RefusedError
from basinside.pipeline.revisions import read_revision
from basinside.problem import any_stop
from basinside.render.change_words import change_data, change_lines

Document = Mapping[str, Any]


@dataclass(frozen=True, slots=True, kw_only=True)
class Comparison:
    """What changed from one side to the other, and who has to refresh which steps."""

    old: str
    new: str
    changes: tuple[Change, ...]
    refresh: Mapping[str, tuple[str, ...]]


def close_edition(root: Path) -> tuple[Path, bool]:
    """Write the current edition in the clear; say where, and whether it was written now.

    Raises:
        FolderError: when it cannot be written.
        RefusedError: when the handbook has problems, or the edition was closed with other content.
    """
    clinic = sound_clinic(root)
    document = _settled(edition_document(clinic.content))
    path = root / "content" / "editions" / f"{document['edition']}.json"
    if files.read_if_there(path) is not None:
        if differs(read_object(path), document):
            raise RefusedError(
                f"{path}: edition {document['edition']} was closed with other content; give the"
                " handbook a new edition id first."
            )
        return path, False
    files.write_new_file(path, json.dumps(document, ensure_ascii=False, indent=1) + "\n")
    return path, True


def compare_sides(root: Path, old: str, new: str) -> Comparison:
    """Return what changed from one side to another.

    Args:
        root: the clinic's folder.
        old: an edition id of ``content/editions``, an edition file, a clinic's folder, or a git
            revision of ``root``.
        new: the same.

    Raises:
        FolderError: when something cannot be read.
        RefusedError: when a side is none of these, or its content cannot be compared.
    """
    before, after = _side(root, old), _side(root, new)
    changes = compare(before, after)
    return Comparison(
        old=_called(old, before),
        new=_called(new, after),
        changes=changes,
        refresh=scopes_to_refresh(before, after, changes),
    )


def told(comparison: Comparison) -> list[str]:
    """Return a comparison in words, line by line."""
    return change_lines(comparison.old, comparison.new, comparison.changes, comparison.refresh)


def told_to_a_tool(comparison: Comparison) -> dict[str, object]:
    """Return a comparison for a tool."""
    return {
        "old": comparison.old,
        "new": comparison.new,
        **change_data(comparison.changes, comparison.refresh),
    }


def _called(name: str, document: Document) -> str:
    edition = str(document.get("edition", ""))
    return name if name == edition else f"{name} (edition {edition})"


def _side(root: Path, name: str) -> Document:
    kept = root / "content" / "editions" / f"{name}.json"
    if "/" not in name and "\\" not in name and files.read_if_there(kept) is not None:
        return _edition_file(kept)
    path = Path(name)
    if path.is_dir():
        return _from_files(name, files.read_authored(path))
    if files.read_if_there(path) is not None:
        return _edition_file(path)
    raw = read_revision(root, name)
    if raw is None:
        raise RefusedError(
            f"“{name}” is no edition in {kept.parent}, no edition file, no folder and no git"
            " revision here."
        )
    return _from_files(name, raw)


def _edition_file(path: Path) -> Document:
    document = read_object(path)
    procedures = document.get("procedures")
    if document.get("format") != EDITION_FORMAT or not isinstance(procedures, dict):
        raise RefusedError(f"{path}: this is no closed edition.")
    return document


def _from_files(name: str, raw: Mapping[str, bytes]) -> Document:
    content, problems = load(raw)
    if any_stop(problems) or content.handbook is None:
        raise RefusedError(f"{name}: its content cannot be read; “basinside check” says why.")
    return _settled(edition_document(content))


def _settled(document: Document) -> dict[str, Any]:
    """The document as it would come back from its file: lists for tuples."""
    settled: dict[str, Any] = json.loads(json.dumps(document))
    return settled
