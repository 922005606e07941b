"""Evidence to a decision to a signed record: issued only when the policy is met."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from basinside import files
from basinside.certify.policy import Case, can_be_overridden, judge_policy, stands_in_the_way
from basinside.derive.scopes import find_scope, policy_for
from basinside.model.derived import Policy, Scope
from basinside.model.finding import Finding, fails, holds, unknown
from basinside.model.record import CompletionRecord
from basinside.model.results import AttemptResult, ObservationResult
from basinside.pipeline.build import TRUST_FILE, Clinic
from basinside.pipeline.decision import Asked, SignerKey, signed_record
from basinside.pipeline.desk import Scored, Scorer
from basinside.pipeline.forms import sound_clinic
from basinside.pipeline.keys import read_trust, unlock
from basinside.pipeline.machine_files import as_part
from basinside.pipeline.refusal import RefusedError
from basinside.render.findings import finding_data, finding_line, finding_sentence

__all__ = ["Asked", "SignerKey", "Signing", "open_signer", "sign", "told", "told_to_a_tool"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Signing:
    """What became of it: each line of the policy, and the record unless something stood in the way.

    ``path`` is where the record was written.
    """

    findings: tuple[Finding, ...]
    in_the_way: tuple[Finding, ...]
    record: dict[str, object] | None = None
    path: Path | None = None


def open_signer(path: Path, phrase: str) -> SignerKey:
    """Return a supervisor's key, opened by its phrase.

    Raises:
        RefusedError: when it does not open, or does not say whose it is.
    """
    key_file, private = unlock(path, phrase, "supervisor-key")
    if key_file.staff_code is None:
        raise RefusedError(f"{path.name}: the file does not say whose key it is.")
    return SignerKey(staff_code=key_file.staff_code, did=key_file.did, private=private)


def sign(
    root: Path,
    asked: Asked,
    *,
    key: SignerKey,
    evidence: Sequence[Path],
    marking_phrase: str | None,
    into: Path,
) -> Signing:
    """Judge the evidence and, when the policy is met, write the signed record.

    Args:
        root: the clinic's folder.
        asked: what is to be signed.
        key: the signer's opened key.
        evidence: attempt and observation files.
        marking_phrase: opens the keys of the forms; None when no attempt is among the evidence.
        into: the folder for the record.

    Raises:
        FolderError: when a file cannot be read, or the record is there already.
        RefusedError: when the scope, a step or a piece of evidence is none of this handbook's.
    """
    clinic = sound_clinic(root)
    scope = find_scope(clinic.content, asked.scope)
    if scope is None:
        handbook = clinic.content.handbook
        known = [*(handbook.scopes if handbook else ()), *clinic.content.procedures]
        raise RefusedError(f"There is no scope “{asked.scope}”; there is {', '.join(known)}.")
    _refuse_steps(clinic, scope, asked)
    scorer = Scorer(root, marking_phrase, clinic)
    # In an order of their own, so that the same evidence makes the same record.
    scored = sorted((scorer.score(each) for each in evidence), key=lambda each: each.result.digest)
    policy = policy_for(clinic.content, scope)
    findings = (
        _listed(root, key, asked.on),
        _of_scope(scope, policy, scored),
        *judge_policy(
            _case(clinic, policy, scope, asked, key.staff_code),
            [each.result for each in scored if isinstance(each.result, AttemptResult)],
            [each.result for each in scored if isinstance(each.result, ObservationResult)],
        ),
    )
    in_the_way = stands_in_the_way(findings)
    overridden = [each for each in in_the_way if asked.override and can_be_overridden(each)]
    if len(overridden) < len(in_the_way):
        return Signing(findings=findings, in_the_way=in_the_way)
    if not overridden:  # a reason that nothing needed would only cast doubt on a sound record
        asked = replace(asked, override="")
    record = signed_record(clinic, policy, scope, asked, key, [each.result for each in scored])
    path = into / f"{asked.learner}-{scope.id}-{asked.on.isoformat()}.record.json"
    shaped = as_part(record, CompletionRecord, path.name)
    files.write_new_file(path, shaped.text())
    return Signing(findings=findings, in_the_way=(), record=record, path=path)


def _case(clinic: Clinic, policy: Policy, scope: Scope, asked: Asked, signer: str) -> Case:
    content = clinic.content
    assessment = content.assessments.get(policy.knowledge.assessment) if policy.knowledge else None
    return Case(
        policy=policy,
        procedures=scope.procedures,
        edition=content.handbook.edition if content.handbook else "",
        learner=asked.learner,
        signer=signer,
        on=asked.on,
        attempts_allowed=assessment.attempts if assessment else None,
    )


def _listed(root: Path, key: SignerKey, on: date) -> Finding:
    """Whether examiners of this clinic's records will know the key."""
    if files.read_if_there(root / TRUST_FILE) is None:
        return unknown("signer-listed", signer=key.staff_code)
    entry = next((each for each in read_trust(root).signers if each.did == key.did), None)
    if entry is None or entry.staff_code != key.staff_code:
        return fails("signer-listed", signer=key.staff_code)
    ended = entry.lost or (
        entry.retired if entry.retired and entry.retired < on.isoformat() else ""
    )
    if ended or entry.from_ > on.isoformat():
        return fails("signer-listed", reason="not-in-use", signer=key.staff_code)
    return holds("signer-listed", signer=key.staff_code, role=entry.role)


def _of_scope(scope: Scope, policy: Policy, scored: Sequence[Scored]) -> Finding:
    """Evidence on something else than the scope and its policy would only look like evidence."""
    wanted = policy.knowledge.assessment if policy.knowledge else ""
    strange = set()
    for each in scored:
        result = each.result
        if isinstance(result, ObservationResult):
            if result.procedure not in scope.procedures:
                strange.add(result.procedure)
        elif result.assessment != wanted:
            strange.add(result.assessment)
    if strange:
        return fails("evidence-of-scope", about=", ".join(sorted(strange)), scope=scope.id)
    return holds("evidence-of-scope", scope=scope.id)


def _refuse_steps(clinic: Clinic, scope: Scope, asked: Asked) -> None:
    if bool(asked.steps) != (asked.beside is not None):
        raise RefusedError("Working beside somebody names the person and the steps, both.")
    if asked.beside == asked.learner:
        raise RefusedError("Nobody works beside themselves.")
    known = {
        f"{name}/{step.step}"
        for name in scope.procedures
        if name in clinic.content.procedures
        for _, step in clinic.content.procedures[name].steps
    }
    for each in asked.steps:
        if each not in known:
            raise RefusedError(f"There is no step “{each}” in {scope.id}; write PROCEDURE/STEP.")


def told(signing: Signing) -> list[str]:
    """Return each line of the policy with its verdict, then what kept it from being signed."""
    lines = [finding_line(each) for each in signing.findings]
    if signing.in_the_way:
        lines += ["", *(f"Refused: {finding_sentence(each)}" for each in signing.in_the_way)]
    return lines


def told_to_a_tool(signing: Signing) -> dict[str, object]:
    """Return what became of a signing, for a tool."""
    return {
        "signed": str(signing.path) if signing.path else None,
        "findings": finding_data(signing.findings),
        "refused_by": finding_data(signing.in_the_way),
    }
