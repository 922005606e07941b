"""Examining at the command line: forgers, tamperers and typists each get one plain line."""

import json
import shutil
from pathlib import Path
from typing import Any

import pytest
from cryptography.hazmat.primitives.asymmetric import ec

from basinside.certify.multikey import did_key
from basinside.certify.record import record_id
from basinside.certify.secure import secure
from basinside.certify.trust import add_signer, new_trust_list, sign_trust_list
from tests.cli.run import Ran, basinside, edited, evidence, phrases

ON = "2026-11-20"


def examine(record: Path, *more: object, on: str = ON) -> Ran:
    return basinside("examine", "--on", on, record, *more)


def built(clinic: Path, into: Path) -> Path:
    """What an outsider is shown: a folder with a page, its script and the trust list."""
    (into / "assets").mkdir(parents=True)
    shutil.copy2(clinic / "content" / "trust.json", into)
    (into / "examine.html").write_text("<script src='assets/basinside.js'></script>")
    (into / "assets" / "basinside.js").write_text("'use strict';")
    return into


def forged(record: Path, into: Path, private: Any, **subject: Any) -> Path:
    """The record changed and signed anew by somebody else."""
    plain = json.loads(record.read_text(encoding="utf-8"))
    plain["credentialSubject"].update(subject)
    plain["issuer"]["id"] = did_key(private.public_key())
    plain["id"] = record_id(plain)
    out = into / "forged.record.json"
    out.write_text(json.dumps(secure(plain, private, created=plain["validFrom"])))
    return out


def tampered(folder: Path, private: Any) -> None:
    """A trust list of the forger's own, and a script that says yes to everything."""
    root = ec.derive_private_key(7_777, ec.SECP256R1())
    trust = new_trust_list(handbook="highfell", root=root.public_key(), issued="2026-10-01")
    trust = add_signer(
        trust,
        did_key(private.public_key()),
        staff_code="S-01",
        role="supervisor",
        from_="2026-10-01",
    )
    signed = sign_trust_list(trust, root, issued="2026-10-01")
    (folder / "trust.json").write_text(signed.text())
    (folder / "assets" / "basinside.js").write_text("document.title = 'good';")


def test_a_good_record_with_folder_and_fingerprint(clinic: Path, record: Path) -> None:
    words = phrases(clinic)["Root fingerprint"]
    ran = examine(record, clinic, "--root", words)
    assert ran.code == 0
    assert not [each for each in ran.lines if each.startswith("FAILS")]
    assert "demonstration key" in ran.lines[-1]
    typed_otherwise = words.upper().replace(" ", "-")
    assert examine(record, clinic, "--root", typed_otherwise).code == 0


def test_an_outsider_finds_the_forgery_by_the_fingerprint_alone(
    clinic: Path, record: Path, tmp_path: Path
) -> None:
    forger = ec.derive_private_key(6_666, ec.SECP256R1())
    fake = forged(record, tmp_path, forger)
    folder = built(clinic, tmp_path / "stick")
    tampered(folder, forger)
    # The folder vouches for the forger; without the six words nobody can tell.
    believed = examine(fake, folder)
    assert believed.code == 0
    assert "according to this folder" in believed.lines[-1]
    found = examine(fake, folder, "--root", phrases(clinic)["Root fingerprint"])
    assert found.code == 1
    assert any(
        each.startswith("FAILS") and "the trust list was forged" in each for each in found.lines
    )
    assert found.lines[-1].startswith("This record cannot be relied on.")


def test_a_forged_record_beside_the_true_folder(clinic: Path, record: Path, tmp_path: Path) -> None:
    fake = forged(record, tmp_path, ec.derive_private_key(6_666, ec.SECP256R1()))
    ran = examine(fake, clinic)
    assert ran.code == 1
    assert any("trust list does not vouch" in each for each in ran.lines)


def test_a_record_altered_after_signing(clinic: Path, record: Path, tmp_path: Path) -> None:
    plain = json.loads(record.read_text(encoding="utf-8"))
    plain["credentialSubject"]["identifier"][0]["identityHash"] = "M-15"
    altered = edited(record, tmp_path, credentialSubject=plain["credentialSubject"])
    ran = examine(altered, clinic)
    assert ran.code == 1
    assert ran.lines[0].startswith("FAILS           The signature is not right. It was altered")
    # Nobody knows who signed what was altered: nothing is said of the key or of the signer.
    for said in ("is the key that signed it", "two people", "was in use on the day"):
        assert said not in ran.said
    says = ran.lines.index("The record says:")
    assert ran.lines[says + 1].strip().startswith("M-15 may do this alone")
    assert ran.lines[-1].startswith("This record cannot be relied on")


def test_an_altered_trust_list(clinic: Path, record: Path, tmp_path: Path) -> None:
    edited(clinic / "content" / "trust.json", tmp_path, issued="2026-10-02")
    ran = examine(record, tmp_path)
    assert ran.code == 1
    assert any("not as its root key signed it" in each for each in ran.lines)


@pytest.mark.parametrize("text", ["{", "[1, 2]", '{"a": 1, "a": 2}', "\x00\xff", "null"])
def test_a_trust_list_that_is_none(clinic: Path, record: Path, tmp_path: Path, text: str) -> None:
    (tmp_path / "trust.json").write_bytes(text.encode("latin-1"))
    ran = examine(record, tmp_path)
    assert ran.code == 1
    assert any(each.startswith("FAILS") and "no trust list" in each for each in ran.lines)


def test_an_altered_attempt_is_not_the_records_evidence(
    clinic: Path, record: Path, tmp_path: Path
) -> None:
    attempt = next(each for each in evidence(clinic) if ".attempt." in each.name)
    assert examine(record, clinic, "--evidence", attempt).code == 0
    altered = edited(attempt, tmp_path, date="2026-11-17")
    ran = examine(record, clinic, "--evidence", altered)
    assert ran.code == 1
    assert any("not that of this record" in each for each in ran.lines)


def test_a_record_out_of_date(clinic: Path, record: Path) -> None:
    assert examine(record, clinic, on="2027-11-20").code == 0
    ran = examine(record, clinic, on="2027-11-21")
    assert ran.code == 1
    assert any("It has ended." in each for each in ran.lines)


def test_without_a_folder_nobody_says_who_signed(record: Path) -> None:
    ran = examine(record)
    assert ran.code == 1
    assert ran.lines[-1].startswith("Nobody here knows who signed this.")


def test_the_arithmetic_alone(record: Path, tmp_path: Path) -> None:
    good = basinside("examine", "--signature-only", record)
    assert (good.code, len(good.lines)) == (0, 1)
    altered = basinside("examine", "--signature-only", edited(record, tmp_path, name="Other"))
    assert (altered.code, len(altered.lines)) == (1, 1)
    other = tmp_path / "other.json"
    private = ec.derive_private_key(5, ec.SECP256R1())
    foreign = secure({"hello": "world"}, private, created="2026-11-20T00:00:00Z")
    other.write_text(json.dumps(foreign))
    assert basinside("examine", "--signature-only", other).code == 0


@pytest.mark.parametrize(
    ("words", "says"),
    [("quack expand", "6 words"), ("quack expand rope uphill house zzzz", "zzzz")],
)
def test_words_that_are_no_fingerprint(record: Path, words: str, says: str) -> None:
    ran = examine(record, "--root", words)
    assert (ran.code, len(ran.lines)) == (1, 1)
    assert says in ran.lines[0]


@pytest.mark.parametrize("text", ["", "{", "[]", "7", '{"a": 1.5}', '{"a": 1, "a": 1}', "\xff"])
def test_what_is_no_json_object_gets_one_line(tmp_path: Path, text: str) -> None:
    path = tmp_path / "x.record.json"
    path.write_bytes(text.encode("latin-1"))
    ran = examine(path)
    assert (ran.code, len(ran.lines)) == (1, 1)
    assert "x.record.json" in ran.lines[0]


def test_the_findings_for_a_tool(clinic: Path, record: Path) -> None:
    told = json.loads(examine(record, clinic, "--json").said)
    assert told["standing"] == "demonstration"
    assert told["good"] is True
    assert {each["code"] for each in told["findings"]} >= {"signature", "key-listed", "in-date"}
