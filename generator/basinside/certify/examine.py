"""Examine a completion record: what holds, what fails, and what cannot be known.

Findings come in the order in which a reader should take them. No sentence is made here, and
nothing is concluded from what the examined person may have brought: a trust list counts only as
far as its own signature and the fingerprint that came by another road carry it.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from basinside.certify.record import record_id
from basinside.certify.secure import verify_signature_only
from basinside.certify.shape import examine_shape, moment_of
from basinside.certify.trust import TRUST_LIST_SIGNATURE, verify_trust_list
from basinside.model.finding import Finding, Verdict, fails, holds, unknown
from basinside.model.record import CompletionRecord
from basinside.model.trust_list import Signer, TrustList

NEVER_KNOWN = ("who-sat", "what-was-seen", "when-signed", "revoked")
"""What no file can show: who sat at the tablet, whether the practice was as written, whether the
signer's clock was right, and whether the record was taken back since."""


class Standing(StrEnum):
    """The most that may be said of a record."""

    FAILS = "fails"
    DEMONSTRATION = "demonstration"
    UNKNOWN_SIGNER = "unknown-signer"
    ACCORDING_TO_FOLDER = "according-to-folder"
    CONFIRMED = "confirmed"


@dataclass(frozen=True, slots=True, kw_only=True)
class Examination:
    """All findings in order, and the most that may be said.

    ``record`` is what was examined, when it has the shape of one: what it says, not what holds.
    """

    findings: tuple[Finding, ...]
    standing: Standing
    signer: str | None
    record: CompletionRecord | None = None


def examine(
    record: Mapping[str, object],
    *,
    trust: object | None,
    root_words: str | None,
    fingerprint: Callable[[str], str],
    on: date | None,
    evidence: tuple[str, ...] = (),
) -> Examination:
    """Return what can be said of a record.

    ``trust`` is the parsed ``trust.json`` of the folder at hand, ``root_words`` the six words
    that came by another road, as ``fingerprint`` writes them for a root key's did:key; ``on`` is
    the day to judge, ``evidence`` the digests of evidence files at hand. Never raises for
    anything that a record or a trust list holds.
    """
    signature = verify_signature_only(record)
    # A signature that is not right says nothing about whose it is, whatever key it names.
    key = signature.data.get("key") if signature.verdict is Verdict.HOLDS else None
    shaped, shape = examine_shape(record)
    findings = [signature, shape, _content_id(record, shape)]
    listed_by, about_list = _trust(trust, root_words, fingerprint)
    entry = _entry(listed_by, key)
    findings += [_issuer(shaped, key), *about_list, _listed(listed_by, entry, key, shaped)]
    if entry is not None and shaped is not None:
        findings += [_signer(shaped, entry), _key_in_use(shaped, entry)]
    demo = (entry is not None and entry.demo is True) or (
        listed_by is not None and listed_by.demo is True
    )
    if demo:
        findings.append(unknown("demonstration-key"))
    if shaped is not None:
        findings += [_in_date(shaped, on), *_evidence(shaped, evidence)]
    findings += [unknown(code) for code in NEVER_KNOWN]
    return Examination(
        findings=tuple(findings),
        standing=_standing(findings, entry, demo=demo),
        signer=entry.staff_code if entry is not None else None,
        record=shaped,
    )


def _content_id(record: Mapping[str, object], shape: Finding) -> Finding:
    if shape.verdict is not Verdict.HOLDS:
        return unknown("id-follows-content")
    if record.get("id") != record_id(record):
        return fails("id-follows-content")
    return holds("id-follows-content")


def _issuer(shaped: CompletionRecord | None, key: str | None) -> Finding:
    if shaped is None or key is None:
        return unknown("issuer-holds-key")
    if shaped.issuer.id != key:
        return fails("issuer-holds-key", issuer=shaped.issuer.id, key=key)
    return holds("issuer-holds-key", key=key)


def _trust(
    plain: object | None, root_words: str | None, fingerprint: Callable[[str], str]
) -> tuple[TrustList | None, list[Finding]]:
    """The list, when it may be looked into at all, and what was found of it."""
    if plain is None:
        reason = "no-trust-list"
        return None, [
            unknown(TRUST_LIST_SIGNATURE, reason=reason),
            unknown("root-fingerprint", reason=reason),
        ]
    trust, signed = verify_trust_list(plain)
    if trust is None or signed.verdict is not Verdict.HOLDS:
        return None, [signed, unknown("root-fingerprint", reason="list-does-not-hold")]
    words = fingerprint(trust.root.did)
    if root_words is None:
        return trust, [signed, unknown("root-fingerprint", reason="not-given", words=words)]
    if root_words != words:
        return None, [signed, fails("root-fingerprint", words=words, given=root_words)]
    return trust, [signed, holds("root-fingerprint", words=words)]


def _entry(trust: TrustList | None, key: str | None) -> Signer | None:
    if trust is None or key is None:
        return None
    return next((each for each in trust.signers if each.did == key), None)


def _listed(
    trust: TrustList | None, entry: Signer | None, key: str | None, record: CompletionRecord | None
) -> Finding:
    """A list speaks for its own handbook and for no other."""
    if trust is None or key is None:
        return unknown("key-listed")
    if entry is None:
        return fails("key-listed", reason="not-on-it", key=key)
    if record is not None and record.credential_subject.scope.handbook != trust.handbook:
        named = record.credential_subject.scope.handbook
        return fails("key-listed", reason="other-handbook", named=named, listed=trust.handbook)
    return holds("key-listed", staff_code=entry.staff_code, role=entry.role)


def _signer(record: CompletionRecord, entry: Signer) -> Finding:
    """The name on the record is the key's, and nobody signed for themselves."""
    learner = record.credential_subject.identifier[0].identity_hash
    if record.issuer.name != entry.staff_code:
        return fails(
            "signer", reason="other-name", named=record.issuer.name, listed=entry.staff_code
        )
    if learner == entry.staff_code:
        return fails("signer", reason="signed-for-self", listed=entry.staff_code)
    return holds("signer", listed=entry.staff_code, learner=learner)


def _key_in_use(record: CompletionRecord, entry: Signer) -> Finding:
    """Judged at the moment the proof names; whether the clock was right cannot be known."""
    created = record.proof.created if record.proof is not None else record.valid_from
    signed = min(_day(created), _day(record.valid_from)).isoformat()
    latest = max(_day(created), _day(record.valid_from)).isoformat()
    if entry.lost is not None:
        return fails("key-in-use", reason="lost", lost=entry.lost)
    if signed < entry.from_:
        return fails("key-in-use", reason="not-yet", signed=signed, counts_from=entry.from_)
    if entry.retired is not None and latest > entry.retired:
        return fails("key-in-use", reason="retired", signed=latest, retired=entry.retired)
    if entry.retired is not None:
        return holds("key-in-use", signed=signed, retired=entry.retired)
    return holds("key-in-use", signed=signed)


def _in_date(record: CompletionRecord, on: date | None) -> Finding:
    first, last = _day(record.valid_from), _day(record.valid_until)
    days = {"valid_from": first.isoformat(), "valid_until": last.isoformat()}
    if on is None:
        return unknown("in-date", **days)
    if on < first:
        return fails("in-date", reason="not-yet", on=on.isoformat(), **days)
    if on > last:
        return fails("in-date", reason="ended", on=on.isoformat(), **days)
    return holds("in-date", on=on.isoformat(), **days)


def _evidence(record: CompletionRecord, given: tuple[str, ...]) -> list[Finding]:
    """One finding for each piece that the record names, then one for each that it does not."""
    named = [each.evidence_digest for each in record.evidence]
    found = [
        holds("evidence", digest=each) if each in given else unknown("evidence", digest=each)
        for each in named
    ]
    return found + [
        fails("evidence", reason="not-of-this-record", digest=each)
        for each in given
        if each not in named
    ]


def _day(moment: str) -> date:
    return moment_of(moment).date()


def _standing(findings: list[Finding], entry: Signer | None, *, demo: bool) -> Standing:
    said = {each.code: each.verdict for each in findings}
    if Verdict.FAILS in {each.verdict for each in findings} or any(
        said[code] is not Verdict.HOLDS for code in ("signature", "shape", "issuer-holds-key")
    ):
        return Standing.FAILS
    if demo:
        return Standing.DEMONSTRATION
    if entry is None:
        return Standing.UNKNOWN_SIGNER
    if said["root-fingerprint"] is Verdict.HOLDS:
        return Standing.CONFIRMED
    return Standing.ACCORDING_TO_FOLDER
