"""What a supervisor decided, as a signed record in the words of the handbook."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict, dataclass
from datetime import date
from typing import Any, Literal

from basinside.certify.days import NotADurationError, day_after
from basinside.certify.record import (
    CoveredProcedure,
    Decision,
    EvidenceGiven,
    KnowledgeResult,
    RecordWords,
    first_moment,
    unsigned_record,
)
from basinside.certify.secure import secure
from basinside.derive.scopes import procedure_scope_digest
from basinside.model.derived import Policy, Scope
from basinside.model.machine_file import MachineFileError
from basinside.model.results import AttemptResult, ObservationResult
from basinside.pipeline.build import Clinic
from basinside.pipeline.keys import PrivateKey
from basinside.pipeline.machine_files import printable
from basinside.pipeline.refusal import RefusedError
from basinside.render.record_words import (
    attempt_name,
    beside_limit,
    observation_name,
    record_text,
    scope_title,
)
from basinside.render.views.titles import procedure_title


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What a supervisor wants to sign, for whom, from which day.

    ``beside`` is the staff code of whom the person works beside, on ``steps`` only; without it
    the record is for working alone. ``until`` ends it sooner than the policy does.
    """

    scope: str
    learner: str
    on: date
    beside: str | None = None
    steps: tuple[str, ...] = ()
    limits: tuple[str, ...] = ()
    override: str = ""
    until: date | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class SignerKey:
    """The signer's key, opened."""

    staff_code: str
    did: str
    private: PrivateKey


def signed_record(
    clinic: Clinic,
    policy: Policy,
    scope: Scope,
    asked: Asked,
    key: SignerKey,
    results: Sequence[AttemptResult | ObservationResult],
) -> dict[str, object]:
    """Return the signed record of a decision whose evidence was judged before.

    Raises:
        RefusedError: when it would not be a sound record.
    """
    try:
        decision = _decision(clinic, policy, scope, asked, key, results)
        return secure(unsigned_record(decision), key.private, created=first_moment(asked.on))
    except MachineFileError as error:
        raise RefusedError(f"The record would not be sound: {printable(error.lines[0])}") from None
    except (NotADurationError, ValueError) as error:
        raise RefusedError(f"No record: {error}.") from None


def _decision(
    clinic: Clinic,
    policy: Policy,
    scope: Scope,
    asked: Asked,
    key: SignerKey,
    results: Sequence[AttemptResult | ObservationResult],
) -> Decision:
    content, handbook = clinic.content, clinic.content.handbook
    if handbook is None or policy.lasts is None:
        raise ValueError("the policy does not say how long a record lasts")
    procedures = tuple(
        CoveredProcedure(
            id=name,
            title=procedure_title(clinic.derived.procedures[name]),
            scope_digest=procedure_scope_digest(content, name),
        )
        for name in scope.procedures
    )
    title = scope_title(scope.id, [each.title for each in procedures])
    level: Literal["alone", "beside"] = "alone" if asked.beside is None else "beside"
    until = day_after(asked.on, policy.lasts)
    return Decision(
        handbook=handbook.handbook,
        edition=handbook.edition,
        language=handbook.language,
        learner=asked.learner,
        scope_id=scope.id,
        scope_title=title,
        scope_digest=scope.digest,
        procedures=procedures,
        knowledge=_knowledge(results),
        practice_seen=sum(isinstance(each, ObservationResult) and each.counts for each in results),
        evidence=tuple(_given(each) for each in results),
        signer=key.staff_code,
        signer_did=key.did,
        valid_from=asked.on,
        valid_until=until if asked.until is None else min(until, asked.until),
        words=RecordWords(**_plain(asdict(record_text(title, level, policy)))),
        level=level,
        steps=asked.steps,
        limits=(*((beside_limit(asked.beside),) if asked.beside else ()), *asked.limits),
        override=asked.override,
    )


def _plain(words: dict[str, Any]) -> dict[str, str]:
    return {name: str(text) for name, text in words.items()}


def _knowledge(
    results: Sequence[AttemptResult | ObservationResult],
) -> KnowledgeResult | None:
    attempts = [each for each in results if isinstance(each, AttemptResult)]
    if not attempts:
        return None
    best = max(attempts, key=lambda each: (each.passed, each.points))
    return KnowledgeResult(passed=best.items_passed, of=len(best.items), needed=best.items_needed)


def _given(result: AttemptResult | ObservationResult) -> EvidenceGiven:
    name, told = (
        attempt_name(result) if isinstance(result, AttemptResult) else observation_name(result)
    )
    return EvidenceGiven(digest=result.digest, name=name, narrative=told)
