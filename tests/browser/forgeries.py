"""Completion records and trust lists, good and forged in every way we know."""

import copy
import json
import random
from collections.abc import Callable
from datetime import date
from typing import Any

from cryptography.hazmat.primitives.asymmetric import ec

from basinside.certify.multikey import base58btc, did_key, from_base58btc
from basinside.certify.record import (
    CoveredProcedure,
    Decision,
    EvidenceGiven,
    KnowledgeResult,
    RecordWords,
    record_id,
    unsigned_record,
)
from basinside.certify.secure import secure
from basinside.certify.trust import add_signer, lose, new_trust_list, retire, sign_trust_list

Record = dict[str, Any]
CREATED = "2026-11-20T09:05:00Z"
P256_PRIME = 2**256 - 2**224 + 2**192 + 2**96 - 1


def key(number: int) -> ec.EllipticCurvePrivateKey:
    """A key that is the same on every run."""
    return ec.derive_private_key(0xB0_0000 + number, ec.SECP256R1())


ROOT, SIGNER, RETIRED, LOST, STRANGER = (key(n) for n in range(5))
DEMO = key(9)
CODES = {"S-01": SIGNER, "S-02": RETIRED, "S-03": LOST, "S-09": DEMO}


def a_digest(letter: str, kind: str = "scope") -> str:
    return f"{kind}-v1:{letter * 43}"


def decision(signer: str, private: ec.EllipticCurvePrivateKey, **more: Any) -> Record:
    given: dict[str, Any] = {
        "handbook": "highfell",
        "edition": "2026.2",
        "language": "en",
        "learner": "N-014",
        "scope_id": "bag-masks",
        "scope_title": "Bag-masks",
        "scope_digest": a_digest("A"),
        "procedures": (CoveredProcedure(id="boil", title="Boil", scope_digest=a_digest("B")),),
        "knowledge": KnowledgeResult(passed=11, of=12, needed=10),
        "practice_seen": 2,
        "evidence": (
            EvidenceGiven(digest=a_digest("C", "answers"), name="Attempt"),
            EvidenceGiven(digest=a_digest("D", "observation"), name="Practice", narrative="All"),
        ),
        "signer": signer,
        "signer_did": did_key(private.public_key()),
        "valid_from": date(2026, 11, 20),
        "valid_until": date(2027, 11, 19),
        "words": RecordWords(
            name="May reprocess é 😀", description="D", criteria="C", knowledge="K", practice="P"
        ),
    }
    return unsigned_record(Decision(**{**given, **more}))


def signed(signer: str = "S-01", **more: Any) -> Record:
    private = CODES.get(signer, STRANGER)
    return secure(decision(signer, private, **more), private, created=CREATED)


def again(record: Record, change: Callable[[Record], None], *, renumber: bool = True) -> Record:
    """The record changed, numbered and signed again by its own key: what a forger can do."""
    other = copy.deepcopy(record)
    change(other)
    if renumber and "id" in other:
        other["id"] = record_id(other)
    private = next(
        (each for each in CODES.values() if did_key(each.public_key()) in json.dumps(other)),
        STRANGER,
    )
    return secure(other, private, created=CREATED)


def trust_list() -> Record:
    trust = new_trust_list(handbook="highfell", root=ROOT.public_key(), issued="2026-10-01")
    for code, private in CODES.items():
        did = did_key(private.public_key())
        trust = add_signer(
            trust, did, staff_code=code, role="supervisor", from_="2026-10-01",
            demo=code == "S-09",
        )  # fmt: skip
    trust = lose(retire(trust, "S-02", on="2026-11-30"), "S-03", on="2026-11-25")
    return sign_trust_list(trust, ROOT, issued="2026-11-01").plain()


TRUST = trust_list()


def put(record: Record, path: tuple[str | int, ...], value: Any) -> None:
    inner: Any = record
    for step in path[:-1]:
        inner = inner[step]
    inner[path[-1]] = value


def with_proof(record: Record, **members: Any) -> Record:
    return {**record, "proof": {**record["proof"], **members}}


def odd_keys() -> list[str]:
    """Verification methods that are no key of ours, each in its own way."""
    good = did_key(SIGNER.public_key()).removeprefix("did:key:")
    raw = from_base58btc(good[1:])
    off_curve = raw[:-1] + bytes([raw[-1] ^ 1])
    over = raw[:3] + b"\xff" * 32
    # 5 is the x of a point; 5 + p means the same to a reader who does not look at the size.
    wrapped = raw[:2] + b"\x02" + (P256_PRIME + 5).to_bytes(32, "big")
    texts = [
        good,
        f"did:key:{good}",
        f"did:key:{good}#{good}x",
        f"did:key:{good}#{good}#{good}",
        "did:key:z6MkrJVnaZkeFzdQyMZu1cgjg7k1pZZ6pvBQ7XJPt4swbTQ2#z",
        f"did:key:z{'1' * 300}#z",
        "did:key:z0OIl#z0OIl",
        "did:key:z#z",
    ]
    for data in (off_curve, over, wrapped, b"\x80\x24\x04" + raw[3:], b"\0" + raw):
        name = "z" + base58btc(data)
        texts.append(f"did:key:{name}#{name}")
    return texts


def altered_records() -> list[Record]:
    good = signed()
    out = [
        good,
        signed("S-02"),
        signed("S-03"),
        signed("S-09"),
        signed("X-99"),
        decision("S-01", SIGNER),
    ]
    out.append(signed(handbook="lowfell"))
    out.append(
        signed(level="beside", steps=("boil/fill",), limits=("Only by day",), override="Why")
    )
    out.append(signed(knowledge=None, practice_seen=0))
    out.append(signed("S-02", valid_from=date(2026, 12, 24)))
    out.append(signed("S-01", valid_from=date(2026, 9, 1)))
    out.append(signed("S-01", valid_from=date(2026, 11, 1), valid_until=date(2026, 11, 21)))
    # Altered after signing, in every member that is text.
    changes: list[tuple[tuple[str | int, ...], Any]] = [
        (("name",), "x"),
        (("validUntil",), "2036-11-19T23:59:59Z"),
        (("id",), good["id"][:-1] + "0"),
        (("validFrom",), "2026-11-20"), (("validFrom",), "2026-02-30T00:00:00Z"),
        (("validFrom",), "0000-01-01T00:00:00Z"), (("validFrom",), "2028-01-01T00:00:00Z"),
        (("validFrom",), "2026-11-20T00:30:00+05:45"),
        (("validUntil",), "2026-11-30T23:30:00.5-02:00"),
        (("credentialSubject", "identifier", 0, "identityHash"), "S-01"),
        (("credentialSubject", "identifier", 0, "identityHash"), "Anna"),
        (("credentialSubject", "identifier", 0, "hashed"), True),
        (("credentialSubject", "level"), "chief"), (("credentialSubject", "level"), None),
        (("credentialSubject", "result"), None), (("credentialSubject", "result"), []),
        (("credentialSubject", "scope", "procedures"), []),
        (("credentialSubject", "scope", "extra"), 1), (("credentialSubject", "extra"), {"a": 1}),
        (("credentialSubject", "achievement", "criteria", "extra"), "x"),
        (("credentialSubject", "result", 0, "extra"), "x"), (("evidence", 1, "extra"), "x"),
        (("evidence",), []), (("evidence",), {"0": 1}), (("issuer", "name"), "S-02"),
        (("issuer", "id"), did_key(STRANGER.public_key())), (("issuer",), "S-01"),
        (("type",), ["VerifiableCredential"]),
        (("type",), ["OpenBadgeCredential", "VerifiableCredential"]),
        (("@context",), good["@context"][:2]), (("@context",), None), (("@context",), "x"),
        (("name",), ""),
        (("name",), "é" * 4_000),
        (("name",), "😀" * 4_001),
        (("name",), "😀" * 3_000),
        (("name",), 7),
        (("extra",), "x"),
        (("valid_from",), "2020-01-01T00:00:00Z"),
        (("evidence", 0, "evidence_digest"), good["evidence"][0]["evidenceDigest"]),
        (("@context",), [*good["@context"], "urn:more"]),
    ]  # fmt: skip
    for path, value in changes:
        other = copy.deepcopy(good)
        put(other, path, value)
        out.append(other)

        def change(each: Record, path: tuple[str | int, ...] = path, value: Any = value) -> None:
            put(each, path, value)

        out += [again(good, change), again(good, change, renumber=False)]
    # The proof itself.
    signature = from_base58btc(good["proof"]["proofValue"][1:])
    for value in (
        b"",
        signature[:-1],
        signature + b"\0",
        b"\0" * 64,
        signature[32:] + signature[:32],
    ):
        out.append(with_proof(good, proofValue="z" + base58btc(value)))
    out += [
        with_proof(good, proofValue=value) for value in ("", "u" + "A" * 86, "z0", "z" * 300, 5)
    ]
    out += [with_proof(good, verificationMethod=each) for each in odd_keys()]
    out += [
        with_proof(good, type="x"), with_proof(good, cryptosuite="eddsa-jcs-2022"),
        with_proof(good, proofPurpose="authentication"),
        with_proof(good, created="2026-11-21T00:00:00Z"),
        with_proof(good, extra="x"), with_proof(good, **{"@context": good["@context"][:1]}),
        with_proof(good, **{"@context": ["x"]}), with_proof(good, **{"@context": None}),
        {**good, "proof": [good["proof"]]}, {**good, "proof": [good["proof"]] * 2},
        {**good, "proof": []}, {**good, "proof": "x"}, {**good, "proof": None}, {},
    ]  # fmt: skip
    # A proof whose options hold fewer contexts than the document signs for those alone.
    fewer = {key: value for key, value in good["proof"].items() if key != "@context"}
    out.append({**good, "proof": fewer})
    rng = random.Random(1)
    for _ in range(40):
        text = list(json.dumps(good, ensure_ascii=False))
        spot = rng.choice([n for n, letter in enumerate(text) if letter.isalnum()])
        text[spot] = rng.choice("aZ07")
        try:
            out.append(json.loads("".join(text)))
        except json.JSONDecodeError:
            continue
    return out


def trust_lists() -> list[Record | None]:
    other = copy.deepcopy(TRUST)
    other["signers"][0]["staff_code"] = "S-77"
    by_stranger = secure(
        {k: v for k, v in TRUST.items() if k != "proof"}, STRANGER, created=CREATED
    )

    def own(change: Callable[[Record], None]) -> Record:
        bare = copy.deepcopy({k: v for k, v in TRUST.items() if k != "proof"})
        change(bare)
        return secure(bare, ROOT, created=CREATED)

    return [
        TRUST,
        None,
        {},
        other,
        by_stranger,
        own(lambda each: each.update(demo=True)),
        own(lambda each: each.update(later="kept")),
        own(lambda each: each["signers"].append(each["signers"][0])),
        own(lambda each: each["signers"][1]["jwk"].update(x=each["root"]["jwk"]["x"])),
        own(lambda each: each["signers"][1].update(did="did:key:zDn" + "1" * 45)),
        own(lambda each: each.update(signers=[])),
        own(lambda each: each.pop("signers")),
    ]
