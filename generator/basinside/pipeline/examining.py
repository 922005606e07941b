"""Examine a record file, with or without a folder and a fingerprint."""

from __future__ import annotations

from datetime import date
from pathlib import Path

from basinside import files
from basinside.certify.evidence import answers_digest, observation_digest
from basinside.certify.examine import Examination, Standing, examine
from basinside.certify.secure import verify_signature_only
from basinside.model.attempt import Attempt
from basinside.model.finding import Finding
from basinside.model.observed import Observation
from basinside.pipeline.build import TRUST_FILE
from basinside.pipeline.machine_files import as_part, read_object, read_value
from basinside.pipeline.refusal import RefusedError
from basinside.render.findings import (
    finding_data,
    finding_line,
    finding_lines,
    record_lines,
    record_says,
    standing_sentence,
)
from basinside.seal.codes import CodeError, read_phrase, root_fingerprint

GOOD = frozenset({Standing.CONFIRMED, Standing.ACCORDING_TO_FOLDER, Standing.DEMONSTRATION})
"""Standings in which nothing fails and a listed key signed; the words say how far each goes."""
TRUST_NAMES = ("trust.json", TRUST_FILE)


def examine_file(
    path: Path,
    *,
    folder: Path | None = None,
    root_words: str | None = None,
    on: date | None = None,
    evidence: tuple[Path, ...] = (),
) -> Examination:
    """Return what can be said of a record file.

    Args:
        path: the record.
        folder: a built folder or a clinic's folder, for its trust list.
        root_words: the root fingerprint that came by another road, as typed.
        on: the day to judge.
        evidence: attempt and observation files that are said to be the record's.

    Raises:
        FolderError: when a file cannot be read.
        RefusedError: when the record is not JSON, or the words are no fingerprint.
    """
    record = read_object(path)
    try:
        words = read_phrase(root_words) if root_words is not None else None
    except CodeError as error:
        raise RefusedError(str(error)) from None
    return examine(
        record,
        trust=_trust_of(folder) if folder is not None else None,
        root_words=words,
        fingerprint=root_fingerprint,
        on=on,
        evidence=tuple(_digest(each) for each in evidence),
    )


def signature_of(path: Path) -> Finding:
    """Return whether the arithmetic of a credential's proof is right, and nothing more."""
    return verify_signature_only(read_object(path))


def _trust_of(folder: Path) -> object | None:
    """The trust list of a folder as it stands; what cannot be read is none, and will not hold."""
    for name in TRUST_NAMES:
        if files.read_if_there(folder / name) is not None:
            try:
                value = read_value(folder / name)
            except RefusedError:
                return ""
            return "" if value is None else value
    return None


def _digest(path: Path) -> str:
    value = read_object(path)
    if str(value.get("format", "")).startswith("basinside/attempt/"):
        attempt = as_part(value, Attempt, path.name)
        if attempt.form_digest is None:
            raise RefusedError(f"{path.name}: a self-test is no evidence.")
        return answers_digest(attempt)
    return observation_digest(as_part(value, Observation, path.name))


def told(found: Examination) -> list[str]:
    """Return every finding in words, what the record says, and the most that may be said last."""
    says = [f"  {each}" for each in record_lines(found.record)] if found.record else []
    return [
        *finding_lines(found.findings),
        "",
        *([record_says(), *says, ""] if says else []),
        standing_sentence(found.standing, found.signer),
    ]


def told_finding(finding: Finding) -> str:
    """Return one finding in words."""
    return finding_line(finding)


def told_to_a_tool(found: Examination) -> dict[str, object]:
    """Return an examination, for a tool."""
    return {
        "standing": found.standing.value,
        "good": found.standing in GOOD,
        "signer": found.signer,
        "says": standing_sentence(found.standing, found.signer),
        "findings": finding_data(found.findings),
    }
