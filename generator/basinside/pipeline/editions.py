"""Close an edition, and compare two: an edition id, its file, a folder or a git revision."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

from pydantic import ValidationError

from basinside import files
from basinside.derive.edition_evidence import compare_evidence
from basinside.derive.editions import (
    compare,
    differs,
    edition_document,
    scopes_to_refresh,
)
from basinside.derive.question_changes import (
    Questions,
    assessments_touched,
    compare_questions,
    questions_of,
    questions_touched,
)
from basinside.load.content import load
from basinside.model.content import Content
from basinside.model.derived import Change
from basinside.model.edition import ClosedEdition
from basinside.pipeline.forms import sound_clinic
from basinside.pipeline.machine_files import read_object
from basinside.pipeline.paper_changes import paper_changes
from basinside.pipeline.refusal import RefusedError
from basinside.pipeline.revisions import read_revision
from basinside.render.change_words import change_data, change_lines

Document = Mapping[str, Any]

_NONE_CLOSED: Final = " No edition was closed here yet; “basinside edition close” closes one."


@dataclass(frozen=True, slots=True, kw_only=True)
class Comparison:
    """What changed from one side to the other, and who has to refresh which steps.

    ``unknown`` are kinds of content that a side does not keep, so that nothing is said of them.
    """

    old: str
    new: str
    changes: tuple[Change, ...]
    refresh: Mapping[str, tuple[str, ...]]
    digests: Mapping[str, tuple[str, str]]
    unknown: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Side:
    """One side of a comparison: an edition in the clear, and its content where there is some."""

    document: Document
    content: Content | None = None
    questions: Questions | None = None


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
    changes = list(compare(before.document, after.document))
    changes += compare_evidence(before.document, after.document)
    asked = after.questions if after.questions is not None else before.questions
    changes += compare_questions(before.questions, after.questions)
    changes += questions_touched(asked, changes)
    assessments = after.document.get("assessments") or before.document.get("assessments")
    changes += assessments_touched(assessments, asked, changes)
    changes += paper_changes(before, after, changes)
    return Comparison(
        old=_called(old, before.document),
        new=_called(new, after.document),
        changes=tuple(changes),
        refresh=scopes_to_refresh(before.document, after.document, tuple(changes)),
        digests=_scope_digests(before.document, after.document),
        unknown=_unknown(before, after),
    )


def _scope_digests(old: Document, new: Document) -> dict[str, tuple[str, str]]:
    """Return each scope whose digest is another now, with both; empty for one that is not there."""
    digests: list[dict[str, str]] = []
    for side in (old, new):
        known = {name: each["scope_digest"] for name, each in side["procedures"].items()}
        known.update({name: each["digest"] for name, each in side.get("scopes", {}).items()})
        digests.append(known)
    was, now = digests
    names = dict.fromkeys((*was, *now))
    pairs = {name: (was.get(name, ""), now.get(name, "")) for name in names}
    return {name: pair for name, pair in pairs.items() if pair[0] != pair[1]}


def _unknown(before: Side, after: Side) -> tuple[str, ...]:
    lacks = [
        name
        for name in ("bases", "sources", "assessments")
        if None in (before.document.get(name), after.document.get(name))
    ]
    if before.questions is None or after.questions is None:
        lacks.append("questions")
    if before.content is None and after.content is None:
        lacks.append("prints")
    return tuple(lacks)


def told(comparison: Comparison) -> list[str]:
    """Return a comparison in words, line by line."""
    return change_lines(
        comparison.old,
        comparison.new,
        comparison.changes,
        comparison.refresh,
        unknown=comparison.unknown,
    )


def told_to_a_tool(comparison: Comparison) -> dict[str, object]:
    """Return a comparison for a tool."""
    return {
        "old": comparison.old,
        "new": comparison.new,
        **change_data(comparison.changes, comparison.refresh),
        "scopes": {
            name: {"old": was, "new": now} for name, (was, now) in comparison.digests.items()
        },
        "unknown": list(comparison.unknown),
    }


def _called(name: str, document: Document) -> str:
    edition = str(document.get("edition", ""))
    return name if name == edition else f"{name} (edition {edition})"


def _side(root: Path, name: str) -> Side:
    kept = root / "content" / "editions" / f"{name}.json"
    if "/" not in name and "\\" not in name and files.read_if_there(kept) is not None:
        return _edition_file(kept)
    path = Path(name)
    if path.is_dir():
        return _from_files(name, files.read_authored(path))
    if files.read_if_there(path) is not None:
        return _edition_file(path)
    found = read_revision(root, name)
    if isinstance(found, str):
        closed = sorted(each.stem for each in files.names_in(kept.parent) if each.suffix == ".json")
        there = f" Closed editions here: {', '.join(closed)}." if closed else _NONE_CLOSED
        raise RefusedError(
            f"“{name}” is no closed edition, no edition file and no folder, and it is no git"
            f" revision: {found}.{there}"
        )
    return _from_files(name, found)


def _edition_file(path: Path) -> Side:
    if path.suffix.lower() != ".json":
        raise RefusedError(
            f"{path}: this is no closed edition; those are .json files in content/editions."
        )
    try:
        ClosedEdition.model_validate(document := read_object(path))
    except ValidationError:
        raise RefusedError(
            f"{path}: this is no closed edition; “basinside edition close” writes one."
        ) from None
    return Side(document=document)


def _from_files(name: str, raw: Mapping[str, bytes]) -> Side:
    content, problems = load(raw)
    first = next((each for each in problems if each.stops), None)
    if first is not None:
        more = f" ({first.place.file}: {first.message})"
        raise RefusedError(f"{name}: its content cannot be read{more}; “basinside check” says all.")
    if content.handbook is None:
        raise RefusedError(f"{name}: there is no content/handbook.yaml, so it is no edition.")
    document = _settled(edition_document(content))
    return Side(document=document, content=content, questions=questions_of(content))


def _settled(document: Document) -> dict[str, Any]:
    """The document as it would come back from its file: lists for tuples."""
    settled: dict[str, Any] = json.loads(json.dumps(document))
    return settled
