"""The completion record: a W3C Verifiable Credential 2.0 with Open Badges 3.0 terms.

The member names are those of the two standards; ours are mapped to urn:uuid terms in a third,
inline context. Source of the member names: W3C VC DM 2.0, section 4, and the tables of
Open Badges 3.0. This shape is narrower than either: it is what we write and what we examine.
"""

from __future__ import annotations

from typing import Annotated, Final, Literal
from uuid import uuid5

from pydantic import Field, StringConstraints

from basinside.constants import (
    CREDENTIALS_CONTEXT,
    NAMESPACE,
    OPEN_BADGES_CONTEXT,
    RECORD_TERMS,
    RECORD_TERMS_AS_JSON,
)
from basinside.model.machine_file import (
    DidKey,
    Digest,
    Edition,
    Moment,
    Name,
    Part,
    ScopeDigest,
    ShortText,
    StaffCode,
)
from basinside.model.proof import Proof


def _term(name: str) -> object:
    urn = f"urn:uuid:{uuid5(NAMESPACE, f'record term {name}')}"
    return {"@id": urn, "@type": "@json"} if name in RECORD_TERMS_AS_JSON else urn


RECORD_CONTEXT: Final[tuple[object, ...]] = (
    CREDENTIALS_CONTEXT,
    OPEN_BADGES_CONTEXT,
    {name: _term(name) for name in RECORD_TERMS},
)
"""The ``@context`` of every record, in the order that both standards fix."""

_UUID = r"[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}"
UrnUuid = Annotated[str, StringConstraints(pattern=rf"^urn:uuid:{_UUID}$")]
UrnUuidPart = Annotated[str, StringConstraints(pattern=rf"^urn:uuid:{_UUID}#[a-z]+$")]
CountText = Annotated[str, StringConstraints(pattern=r"^(0|[1-9][0-9]{0,3})$")]
Sentence = Annotated[str, StringConstraints(min_length=1, max_length=4_000)]
StepName = Annotated[
    str, StringConstraints(pattern=r"^[a-z0-9]+(-[a-z0-9]+)*/[a-z0-9]+(-[a-z0-9]+)*$")
]


class Issuer(Part):
    """Who signed: the key, and the staff code it is listed under."""

    id: DidKey
    type: tuple[Literal["Profile"]]
    name: StaffCode


class StaffIdentity(Part):
    """Who the record is about: a staff code, in the clear and nothing else."""

    type: Literal["IdentityObject"]
    hashed: Literal[False]
    identity_hash: StaffCode = Field(alias="identityHash")
    identity_type: Literal["ext:staffCode"] = Field(alias="identityType")


class Criteria(Part):
    """What had to be shown, in words."""

    narrative: Sentence


class ResultDescription(Part):
    """What one result means: the count of items passed, or whether the practice was seen."""

    id: UrnUuidPart
    type: tuple[Literal["ResultDescription"]]
    name: Sentence
    result_type: Literal["RawScore", "Status"] = Field(alias="resultType")
    value_min: CountText | None = Field(default=None, alias="valueMin")
    value_max: CountText | None = Field(default=None, alias="valueMax")
    required_value: CountText | None = Field(default=None, alias="requiredValue")


class Achievement(Part):
    """What the person may do."""

    id: UrnUuid
    type: tuple[Literal["Achievement"]]
    name: Sentence
    description: Sentence
    criteria: Criteria
    achievement_type: Literal["Competency"] = Field(alias="achievementType")
    in_language: Annotated[str, StringConstraints(max_length=35)] = Field(alias="inLanguage")
    version: Edition
    result_description: tuple[ResultDescription, ...] | None = Field(
        default=None, alias="resultDescription"
    )


class Result(Part):
    """One result; ``value`` for a count, ``status`` for the practice."""

    type: tuple[Literal["Result"]]
    result_description: UrnUuidPart = Field(alias="resultDescription")
    value: CountText | None = None
    status: Literal["Completed"] | None = None


class ScopedProcedure(Part):
    """One procedure that the record covers, as it stood."""

    id: Name
    title: Sentence
    digest: ScopeDigest


class Scope(Part):
    """What the record covers: one procedure, or procedures that are certified together."""

    handbook: Name
    id: Name
    title: Sentence
    digest: ScopeDigest
    procedures: Annotated[tuple[ScopedProcedure, ...], Field(min_length=1, max_length=100)]


class Subject(Part):
    """The person, what they may do, and under which limits.

    ``level`` is ``alone`` or ``beside`` (beside a named person, on the named ``steps``).
    """

    type: tuple[Literal["AchievementSubject"]]
    identifier: tuple[StaffIdentity]
    achievement: Achievement
    result: tuple[Result, ...] | None = None
    edition: Edition
    scope: Scope
    level: Literal["alone", "beside"]
    steps: Annotated[tuple[StepName, ...], Field(min_length=1)] | None = None
    limits: Annotated[tuple[Sentence, ...], Field(min_length=1)] | None = None
    override: Sentence | None = None


class Evidence(Part):
    """One attempt or observation that the decision rests on, by its digest."""

    id: UrnUuid
    type: tuple[Literal["Evidence"]]
    name: Sentence
    narrative: ShortText | None = None
    evidence_digest: Digest = Field(alias="evidenceDigest")


class CompletionRecord(Part):
    """``*.record.json``."""

    context: tuple[object, ...] = Field(alias="@context")
    id: UrnUuid
    type: tuple[Literal["VerifiableCredential"], Literal["OpenBadgeCredential"]]
    name: Sentence
    issuer: Issuer
    valid_from: Moment = Field(alias="validFrom")
    valid_until: Moment = Field(alias="validUntil")
    credential_subject: Subject = Field(alias="credentialSubject")
    evidence: Annotated[tuple[Evidence, ...], Field(min_length=1)]
    proof: Proof | None = None
