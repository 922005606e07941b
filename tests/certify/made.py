"""A small clinic of invented people, with keys that are the same in every run."""

from dataclasses import replace
from datetime import date
from typing import Any

from cryptography.hazmat.primitives.asymmetric import ec

from basinside.certify.multikey import did_key
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
from basinside.certify.trust import add_signer, new_trust_list, sign_trust_list
from basinside.model.trust_list import TrustList
from basinside.seal.codes import root_fingerprint

ON = date(2026, 11, 20)


def key(number: int) -> ec.EllipticCurvePrivateKey:
    """A key for tests: its secret is a small number, so it is nobody's."""
    return ec.derive_private_key(number, ec.SECP256R1())


ROOT, SUPERVISOR, OTHER = key(1_001), key(1_002), key(1_003)
ROOT_WORDS = root_fingerprint(did_key(ROOT.public_key()))
SUPERVISOR_DID = did_key(SUPERVISOR.public_key())

WORDS = RecordWords(
    name="Bag-masks",
    description="May reprocess the bag-masks alone.",
    criteria="Knowledge and observed practice as the policy of the handbook asks.",
    knowledge="Items passed",
    practice="Observed practice",
)

DECISION = Decision(
    handbook="highfell",
    edition="2026.2",
    language="en",
    learner="L-014",
    scope_id="bag-masks",
    scope_title="Bag-masks",
    scope_digest="scope-v1:" + "A" * 43,
    procedures=(
        CoveredProcedure(
            id="bag-mask-silicone-boil",
            title="Boil the silicone bag-mask",
            scope_digest="scope-v1:" + "B" * 43,
        ),
        CoveredProcedure(
            id="bag-mask-vinyl-soak",
            title="Soak the vinyl bag-mask",
            scope_digest="scope-v1:" + "C" * 43,
        ),
    ),
    knowledge=KnowledgeResult(passed=11, of=12, needed=10),
    practice_seen=3,
    evidence=(
        EvidenceGiven(digest="answers-v1:" + "D" * 43, name="Attempt at core, form A"),
        EvidenceGiven(
            digest="observation-v1:" + "E" * 43, name="Observation", narrative="Announced, real."
        ),
    ),
    signer="S-01",
    signer_did=SUPERVISOR_DID,
    valid_from=ON,
    valid_until=date(2027, 11, 20),
    words=WORDS,
    limits=("The attempt was made unsupervised.",),
)


def signed(
    decision: Decision = DECISION, private: ec.EllipticCurvePrivateKey = SUPERVISOR
) -> dict[str, Any]:
    return secure(unsigned_record(decision), private, created=first_moment(decision.valid_from))


def decided(**changes: Any) -> Decision:
    return replace(DECISION, **changes)


def listed(*, demo: bool = False) -> TrustList:
    empty = new_trust_list(handbook="highfell", root=ROOT.public_key(), issued="2026-10-01")
    return add_signer(
        empty,
        SUPERVISOR_DID,
        staff_code="S-01",
        role="supervisor",
        from_="2026-10-01",
        demo=demo,
    )


def trusted(trust: TrustList | None = None) -> dict[str, Any]:
    return sign_trust_list(trust or listed(), ROOT, issued="2026-11-01").plain()
