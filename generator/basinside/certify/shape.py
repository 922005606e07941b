"""Whether a document has the shape of our records: contexts, types, ids, members, days.

A general schema lets pass what deceives a reader: another context, a redefined term, an id that
is no address, an end before the beginning. Here all of it is checked against what we write.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import UTC, datetime
from typing import Final

from basinside.canonical import canonical_bytes
from basinside.model.finding import Finding, fails, holds
from basinside.model.machine_file import MachineFileError
from basinside.model.record import RECORD_CONTEXT, CompletionRecord

SHAPE: Final = "shape"
"""The code of the finding that this file makes."""


def examine_shape(document: Mapping[str, object]) -> tuple[CompletionRecord | None, Finding]:
    """Return the document as a record when it has our shape, and the finding.

    A ``reason`` is one of ``other-context``, ``not-a-record``, ``unknown-member``,
    ``no-such-day``, ``days-run-backwards``; ``detail`` names the first place.
    """
    try:
        same = canonical_bytes(document.get("@context")) == canonical_bytes(RECORD_CONTEXT)
    except ValueError:
        same = False
    if not same:
        return None, fails(SHAPE, reason="other-context")
    try:
        record = CompletionRecord.from_plain(document)
    except MachineFileError as error:
        return None, fails(SHAPE, reason="not-a-record", detail=error.lines[0])
    stranger = _unknown_member(record)
    if stranger:
        # Kept when read, but no term of the contexts: a signed member that no reader understands.
        return None, fails(SHAPE, reason="unknown-member", detail=stranger)
    try:
        first, last = moment_of(record.valid_from), moment_of(record.valid_until)
        if record.proof is not None:
            moment_of(record.proof.created)
    except (ValueError, OverflowError):
        return None, fails(SHAPE, reason="no-such-day")
    if last < first:
        return None, fails(SHAPE, reason="days-run-backwards")
    return record, holds(SHAPE)


def moment_of(text: str) -> datetime:
    """Return an RFC 3339 moment in UTC.

    Raises ``ValueError`` or ``OverflowError`` for a day that no calendar has.
    """
    return datetime.fromisoformat(text).astimezone(UTC)


def _unknown_member(record: CompletionRecord) -> str:
    """The first member of the record that is none of ours; those of the proof are not judged."""
    subject = record.credential_subject
    achievement = subject.achievement
    parts = (
        ("", record),
        ("issuer.", record.issuer),
        ("credentialSubject.", subject),
        ("credentialSubject.identifier.", subject.identifier[0]),
        ("credentialSubject.achievement.", achievement),
        ("credentialSubject.achievement.criteria.", achievement.criteria),
        ("credentialSubject.scope.", subject.scope),
        *(("credentialSubject.scope.procedures.", each) for each in subject.scope.procedures),
        *(("credentialSubject.result.", each) for each in subject.result or ()),
        *(
            ("credentialSubject.achievement.resultDescription.", each)
            for each in achievement.result_description or ()
        ),
        *(("evidence.", each) for each in record.evidence),
    )
    for place, part in parts:
        for member in part.model_extra or {}:
            return f"{place}{member}"
    return ""
