"""Findings in words: what an examination, a policy and a trust list came to.

A finding's sentence is the phrase of its code and verdict, then the phrase of its reason. The page
that examines records takes the same phrases, with the same keys, from ``finding_phrases``.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from itertools import groupby

from basinside.model.finding import Finding, Verdict
from basinside.model.record import CompletionRecord
from basinside.render.policy_words import policy_phrases
from basinside.render.wording import _

PAGE = "examine."
"""What the keys begin with in the page's inline JSON."""


def finding_sentence(finding: Finding) -> str:
    """Return what was found, in a sentence or two.

    Raises ``KeyError`` for a code, verdict or reason that has no words.
    """
    phrases = {**_examine_phrases(), **policy_phrases()}
    parts = [phrases[f"{finding.code}.{finding.verdict.value.replace(' ', '-')}"]]
    reason = finding.data.get("reason")
    if reason:
        own = f"{finding.code}.reason.{reason}"
        parts.append(phrases[own if own in phrases else f"reason.{reason}"])
    filled = defaultdict(str, finding.data)
    said = " ".join(part.format_map(filled) for part in parts).strip()
    # What a stranger's file holds must not steer a terminal.
    said = said.replace("\N{NO-BREAK SPACE}", " ")
    return "".join(each if each.isprintable() else "\N{REPLACEMENT CHARACTER}" for each in said)


def finding_line(finding: Finding) -> str:
    """Return the sentence with its verdict in a word before it."""
    return f"{verdict_word(finding.verdict):<15} {finding_sentence(finding)}"


def record_says() -> str:
    """Return the heading over what a record says of itself."""
    return _("The record says:")


def record_lines(record: CompletionRecord) -> list[str]:
    """Return what a record says of itself, whether or not it holds, line by line."""
    subject = record.credential_subject
    alone = subject.level == "alone"
    said = (_("{learner} may do this alone: {scope}.") if alone else
            _("{learner} may work beside a named person: {scope}."))  # fmt: skip
    lines = [
        said.format(learner=subject.identifier[0].identity_hash, scope=subject.scope.title),
        *(f"  {each.title}" for each in subject.scope.procedures),
    ]
    if subject.steps:
        lines.append(_("Steps: {steps}.").format(steps=", ".join(subject.steps)))
    lines += [_("Limit: {limit}").format(limit=each) for each in subject.limits or ()]
    if subject.override:
        lines.append(
            _("Signed in spite of the policy, because: {why}").format(why=subject.override)
        )
    lines.append(
        _("Handbook {handbook}, edition {edition}; from {first} until {last}.").format(
            handbook=subject.scope.handbook,
            edition=subject.edition,
            first=record.valid_from[:10],
            last=record.valid_until[:10],
        )
    )
    return ["".join(c if c.isprintable() else "\N{REPLACEMENT CHARACTER}" for c in each)
            for each in lines]  # fmt: skip


def finding_lines(findings: Iterable[Finding]) -> list[str]:
    """Return findings line by line; evidence with the same verdict is counted in one line."""
    lines = []
    for (code, verdict), group in groupby(findings, key=lambda each: (each.code, each.verdict)):
        same = list(group)
        if code == "evidence" and verdict is not Verdict.FAILS and len(same) > 1:
            said = _examine_phrases()[f"evidence-several.{verdict.value.replace(' ', '-')}"]
            lines.append(f"{verdict_word(verdict):<15} {said.format(n=len(same))}")
        else:
            lines += [finding_line(each) for each in same]
    return lines


def finding_data(findings: Iterable[Finding]) -> list[dict[str, object]]:
    """Return findings for a tool."""
    return [
        {
            "code": each.code,
            "verdict": each.verdict.value,
            "data": dict(each.data),
            "says": finding_sentence(each),
        }
        for each in findings
    ]


def verdict_word(verdict: Verdict) -> str:
    """Return how a question stands, in a word or two."""
    return {
        Verdict.HOLDS: _("holds"),
        Verdict.FAILS: _("FAILS"),
        Verdict.UNKNOWN: _("not known"),
        Verdict.NOT_JUDGED: _("not judged here"),
    }[verdict]


def standing_sentence(standing: str, signer: str | None) -> str:
    """Return the most that may be said of a record: its last line."""
    phrases = _standing_phrases()
    means = phrases[f"standing-means.{standing}"].format(signer=signer or "")
    return f"{phrases[f'standing.{standing}']}. {means}"


def finding_phrases() -> dict[str, str]:
    """Return the phrases of the page that examines records, by key, with {holes}.

    ``examine.CODE.VERDICT``, ``examine.reason.REASON`` or, where a reason means something of its
    own, ``examine.CODE.reason.REASON``; ``examine.standing.S`` and ``examine.standing-means.S``.
    """
    phrases = {**_examine_phrases(), **_standing_phrases()}
    return {PAGE + key: text for key, text in phrases.items()}


def _standing_phrases() -> dict[str, str]:
    """The most that may be said of a record: a heading, and what it means."""
    return {
        "standing.fails": _("This record cannot be relied on"),
        "standing-means.fails": _("At least one thing that must hold does not."),
        "standing.demonstration": _("A demonstration record: it proves nothing"),
        "standing-means.demonstration": _(
            "The signature is right, but its key is a demonstration key, which anybody can have."
        ),
        "standing.unknown-signer": _("Nobody here knows who signed this"),
        "standing-means.unknown-signer": _(
            "The record was not altered since it was signed. Its key is on no trust list that can"
            " be relied on here, so it could be anybody's."
        ),
        "standing.according-to-folder": _("Signed by a listed person, according to this folder"),
        "standing-means.according-to-folder": _(
            "Everything that could be checked holds. The folder says that the key is that of"
            " {signer}; nothing else does, and whoever brought the folder may have made it."
        ),
        "standing.confirmed": _("Signed by a listed person, and the six words agree"),
        "standing-means.confirmed": _(
            "Everything that could be checked holds. The key is that of {signer}, listed under the"
            " root key that your six words name."
        ),
    }


def _examine_phrases() -> dict[str, str]:
    """What each code, verdict and reason of an examination says."""
    return {
        "signature.holds": _("Nothing that was signed has been changed since."),
        "signature.fails": _("The signature is not right."),
        "signature.unknown": _("The signature cannot be checked here."),
        "shape.holds": _("It is a completion record as this program writes them."),
        "shape.fails": _("It is no completion record as this program writes them."),
        "id-follows-content.holds": _("The record's number follows from its content."),
        "id-follows-content.fails": _("The record's number does not belong to its content."),
        "id-follows-content.unknown": _("The record's number cannot be judged."),
        "issuer-holds-key.holds": _("The key that the record names is the key that signed it."),
        "issuer-holds-key.fails": _("The record names one key and was signed with another."),
        "issuer-holds-key.unknown": _("Whose key signed it cannot be judged."),
        "trust-list-signature.holds": _(
            "The trust list is signed by its own root key, on {issued}."
        ),
        "trust-list-signature.fails": _("The trust list is not as its root key signed it."),
        "trust-list-signature.unknown": _("There is no trust list to look at."),
        "root-fingerprint.holds": _("The root key is the one with your six words: {words}."),
        "root-fingerprint.fails": _(
            "The root key of this folder has other words ({words}) than yours ({given}): the"
            " trust list was forged, or it is another handbook's."
        ),
        "root-fingerprint.unknown": _("Whether the root key is the clinic's own is not known."),
        "key-listed.holds": _("The key is on the trust list: {staff_code}, {role}."),
        "key-listed.fails": _("The trust list does not vouch for the key."),
        "key-listed.unknown": _("Whether the key is listed cannot be judged."),
        "signer.holds": _("{listed} signed for {learner}: two people."),
        "signer.fails": _("The signer is not who it should be."),
        "key-in-use.holds": _("The key was in use on the day of signing, {signed}."),
        "key-in-use.fails": _("The key did not count on the day of signing."),
        "demonstration-key.unknown": _("It is a demonstration key: proves nothing."),
        "in-date.holds": _("In date on {on}: it holds from {valid_from} until {valid_until}."),
        "in-date.fails": _("Not in date on {on}: it holds from {valid_from} until {valid_until}."),
        "in-date.unknown": _(
            "It holds from {valid_from} until {valid_until}; no day was given to judge."
        ),
        "evidence.holds": _("The evidence at hand is the one that the record names ({digest})."),
        "evidence.unknown": _("The record names evidence that is not at hand ({digest})."),
        "evidence.fails": _("The evidence at hand is not that of this record ({digest})."),
        "evidence-several.holds": _("{n} pieces of evidence at hand are those the record names."),
        "evidence-several.unknown": _(
            "The record names {n} pieces of evidence that are not at hand."
        ),
        "who-sat.unknown": _("Who really answered the questions."),
        "what-was-seen.unknown": _("Whether the practice was as the observers wrote."),
        "when-signed.unknown": _("Whether the signer's clock was right."),
        "revoked.unknown": _(
            "Whether the record was taken back since, or its key reported lost since."
        ),
        **_reasons(),
    }


def _reasons() -> dict[str, str]:
    not_our_key = _("The proof does not name a key of the kind we use.")
    return {
        "reason.no-proof": _("Nobody signed it."),
        "reason.other-purpose": _("The proof was made for another purpose."),
        "reason.incomplete-proof": _("The proof is incomplete."),
        "reason.too-long": _("The signature is far too long."),
        "reason.not-base58btc": _("The signature holds letters that no signature has."),
        "reason.not-did-key": not_our_key,
        "reason.not-p256": not_our_key,
        "reason.not-on-curve": not_our_key,
        "reason.other-spelling": _("The proof spells its key in a way that no program writes."),
        "reason.wrong-length": _("The signature is too short or too long."),
        "reason.other-context": _("The proof was made for words that mean something else."),
        "reason.no-canonical-form": _("It holds something that cannot be signed."),
        "reason.altered-or-other-key": _(
            "It was altered after it was signed, or another key signed it."
        ),
        "reason.several-proofs": _("It carries several proofs."),
        "reason.more-contexts": _(
            "But definitions of words (@context) were put in after it was signed: the signature"
            " does not cover them."
        ),
        "reason.other-cryptosuite": _("It is signed in a way that this program does not know."),
        "shape.reason.other-context": _("Its words are defined otherwise than ours."),
        "reason.not-a-record": _("A part is missing or is not what belongs there."),
        "reason.unknown-member": _("It holds something that no reader understands: {detail}."),
        "reason.no-such-day": _("It names a day that no calendar has."),
        "reason.days-run-backwards": _("It ends before it begins."),
        "reason.no-trust-list": _("The folder holds none, or no folder was given."),
        "reason.list-does-not-hold": _("The trust list itself is not right."),
        "reason.not-given": _(
            "The six words that reached you by another road were not given. This folder's are:"
            " {words}."
        ),
        "reason.not-a-trust-list": _("It is no trust list of ours."),
        "reason.not-by-root": _("Another key than its root key signed it."),
        "reason.key-forms-differ": _("It writes one key in two ways that disagree."),
        "reason.key-listed-twice": _("It lists one key twice."),
        "reason.not-on-it": _("The key is not on it."),
        "reason.other-handbook": _("The list is of handbook {listed}; the record is of {named}."),
        "reason.other-name": _("The record names {named}; the key is listed for {listed}."),
        "reason.signed-for-self": _("{listed} signed for themselves."),
        "reason.lost": _(
            "It was reported lost on {lost}; nothing that it signed can be relied on."
        ),
        "key-in-use.reason.not-yet": _("It counts from {counts_from}; the signing is of {signed}."),
        "reason.retired": _("It was retired on {retired}; the signing is of {signed}."),
        "in-date.reason.not-yet": _("It has not begun."),
        "reason.ended": _("It has ended."),
        "reason.not-of-this-record": _("The record names other evidence."),
    }
