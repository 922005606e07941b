"""Build the unsigned completion record from what a supervisor decided.

The record says who, on what, on which edition, on what evidence, by whom, until when. Its id
follows from its content, so the same decision always makes the same record.
"""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from typing import Literal
from uuid import uuid5

from basinside.canonical import canonical_bytes
from basinside.constants import NAMESPACE
from basinside.model.record import RECORD_CONTEXT, CompletionRecord


@dataclass(frozen=True, slots=True, kw_only=True)
class CoveredProcedure:
    """One procedure of the scope, with the digest of its step meanings and sequence."""

    id: str
    title: str
    scope_digest: str


@dataclass(frozen=True, slots=True, kw_only=True)
class KnowledgeResult:
    """Items passed of items asked, and how many were needed (counts)."""

    passed: int
    of: int
    needed: int


@dataclass(frozen=True, slots=True, kw_only=True)
class EvidenceGiven:
    """One file that the decision rests on: its digest, and what a reader calls it."""

    digest: str
    name: str
    narrative: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordWords:
    """The sentences of a record, made where all words are made and handed in."""

    name: str
    description: str
    criteria: str
    knowledge: str
    practice: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Decision:
    """What a supervisor decided, and on what.

    ``signer_did`` is the key that will sign; the days are civil days: ``valid_from`` counts from
    its first second, ``valid_until`` to its last, in UTC. ``practice_seen`` is the number of
    observed runs. ``steps`` names the steps of a decision of level ``beside``.
    """

    handbook: str
    edition: str
    language: str
    learner: str
    scope_id: str
    scope_title: str
    scope_digest: str
    procedures: tuple[CoveredProcedure, ...]
    knowledge: KnowledgeResult | None
    practice_seen: int
    evidence: tuple[EvidenceGiven, ...]
    signer: str
    signer_did: str
    valid_from: date
    valid_until: date
    words: RecordWords
    level: Literal["alone", "beside"] = "alone"
    steps: tuple[str, ...] = ()
    limits: tuple[str, ...] = ()
    override: str = ""


def first_moment(day: date) -> str:
    """Return the first second of a civil day, as a record writes it."""
    return f"{day.isoformat()}T00:00:00Z"


def last_moment(day: date) -> str:
    """Return the last second of a civil day, as a record writes it."""
    return f"{day.isoformat()}T23:59:59Z"


def unsigned_record(decision: Decision) -> dict[str, object]:
    """Return the record without proof: strings, truths, lists and objects only.

    Raises ``MachineFileError`` when the decision does not make a record of our shape, and
    ``ValueError`` when signer and learner are one person or the days run backwards.
    """
    if decision.signer == decision.learner:
        raise ValueError("nobody signs for themselves")
    if decision.valid_until < decision.valid_from:
        raise ValueError("the record would end before it begins")
    document: dict[str, object] = {
        "@context": list(RECORD_CONTEXT),
        "type": ["VerifiableCredential", "OpenBadgeCredential"],
        "name": decision.words.name,
        "issuer": {"id": decision.signer_did, "type": ["Profile"], "name": decision.signer},
        "validFrom": first_moment(decision.valid_from),
        "validUntil": last_moment(decision.valid_until),
        "credentialSubject": _subject(decision),
        "evidence": [_evidence(each) for each in decision.evidence],
    }
    document["id"] = record_id(document)
    return CompletionRecord.from_plain(document).plain()


def record_id(document: Mapping[str, object]) -> str:
    """Return the id that a record's content gives it.

    A UUIDv5 over the hexadecimal SHA-256 of the canonical document without ``id`` and ``proof``.
    """
    bare = {key: value for key, value in document.items() if key not in {"id", "proof"}}
    name = hashlib.sha256(canonical_bytes(bare)).hexdigest()
    return f"urn:uuid:{uuid5(NAMESPACE, name)}"


def _subject(decision: Decision) -> dict[str, object]:
    achievement = _achievement(decision)
    results = _results(decision, str(achievement["id"]))
    subject: dict[str, object] = {
        "type": ["AchievementSubject"],
        "identifier": [
            {
                "type": "IdentityObject",
                "hashed": False,
                "identityHash": decision.learner,
                "identityType": "ext:staffCode",
            }
        ],
        "achievement": achievement,
        "edition": decision.edition,
        "scope": {
            "handbook": decision.handbook,
            "id": decision.scope_id,
            "title": decision.scope_title,
            "digest": decision.scope_digest,
            "procedures": [
                {"id": each.id, "title": each.title, "digest": each.scope_digest}
                for each in decision.procedures
            ],
        },
        "level": decision.level,
    }
    optional: dict[str, object] = {
        "result": results,
        "steps": list(decision.steps),
        "limits": list(decision.limits),
        "override": decision.override,
    }
    return subject | {key: value for key, value in optional.items() if value}


def _achievement(decision: Decision) -> dict[str, object]:
    about = f"achievement {decision.handbook} {decision.edition} {decision.scope_digest}"
    name = f"urn:uuid:{uuid5(NAMESPACE, about)}"
    described: list[dict[str, object]] = []
    if decision.knowledge is not None:
        described.append(
            {
                "id": f"{name}#knowledge",
                "type": ["ResultDescription"],
                "name": decision.words.knowledge,
                "resultType": "RawScore",
                "valueMin": "0",
                "valueMax": str(decision.knowledge.of),
                "requiredValue": str(decision.knowledge.needed),
            }
        )
    if decision.practice_seen:
        described.append(
            {
                "id": f"{name}#practice",
                "type": ["ResultDescription"],
                "name": decision.words.practice,
                "resultType": "Status",
            }
        )
    achievement: dict[str, object] = {
        "id": name,
        "type": ["Achievement"],
        "name": decision.words.name,
        "description": decision.words.description,
        "criteria": {"narrative": decision.words.criteria},
        "achievementType": "Competency",
        "inLanguage": decision.language,
        "version": decision.edition,
    }
    return achievement | ({"resultDescription": described} if described else {})


def _results(decision: Decision, achievement: str) -> list[dict[str, object]]:
    results: list[dict[str, object]] = []
    if decision.knowledge is not None:
        results.append(
            {
                "type": ["Result"],
                "resultDescription": f"{achievement}#knowledge",
                "value": str(decision.knowledge.passed),
            }
        )
    if decision.practice_seen:
        results.append(
            {
                "type": ["Result"],
                "resultDescription": f"{achievement}#practice",
                "status": "Completed",
            }
        )
    return results


def _evidence(given: EvidenceGiven) -> dict[str, object]:
    evidence: dict[str, object] = {
        "id": f"urn:uuid:{uuid5(NAMESPACE, given.digest)}",
        "type": ["Evidence"],
        "name": given.name,
        "evidenceDigest": given.digest,
    }
    return evidence | ({"narrative": given.narrative} if given.narrative else {})
