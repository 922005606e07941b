"""Every finding has a sentence; codes and reasons are read from the code that makes them."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from basinside.certify.examine import NEVER_KNOWN, Standing
from basinside.certify.policy import POLICY_LINES
from basinside.model.finding import Finding, Verdict, fails, unknown
from basinside.model.record import CompletionRecord
from basinside.render.findings import (
    finding_line,
    finding_lines,
    finding_phrases,
    finding_sentence,
    record_lines,
    standing_sentence,
)
from tests.certify.made import decided, signed
from tests.house.source_files import PACKAGE

MAKERS = {
    "holds": Verdict.HOLDS,
    "fails": Verdict.FAILS,
    "unknown": Verdict.UNKNOWN,
    "not_judged": Verdict.NOT_JUDGED,
}
CONSTANTS = {
    "SIGNATURE": "signature",
    "SHAPE": "shape",
    "TRUST_LIST_SIGNATURE": "trust-list-signature",
}
SOURCES = [*sorted((PACKAGE / "certify").glob("*.py")), PACKAGE / "pipeline" / "signing.py"]
SIGNATURE_REASONS = [
    str(node.value)
    for name in ("secure.py", "multikey.py")
    for call in ast.walk(ast.parse((PACKAGE / "certify" / name).read_text(encoding="utf-8")))
    if isinstance(call, ast.Call) and ast.unparse(call.func) == "MultikeyError"
    for node in call.args
    if isinstance(node, ast.Constant)
]


def made(path: Path) -> Iterator[tuple[str, Verdict, str]]:
    """Yield (code, verdict, reason) of each finding that a module makes in so many words."""
    for call in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if not (isinstance(call, ast.Call) and isinstance(call.func, ast.Name)):
            continue
        verdict = MAKERS.get(call.func.id)
        if verdict is None or not call.args:
            continue
        first = call.args[0]
        code = (
            first.value
            if isinstance(first, ast.Constant)
            else CONSTANTS.get(ast.unparse(first), "")
        )
        reasons = [
            word.value.value
            for word in call.keywords
            if word.arg == "reason" and isinstance(word.value, ast.Constant)
        ]
        if isinstance(code, str) and code:
            yield code, verdict, str(reasons[0]) if reasons else ""


FOUND = sorted({each for path in SOURCES for each in made(path)})


def test_there_are_findings_to_look_at() -> None:
    assert len(FOUND) > 60
    assert {"signature", "shape", "key-in-use", "signer-listed"} <= {each[0] for each in FOUND}
    assert len(SIGNATURE_REASONS) > 5


@pytest.mark.parametrize(("code", "verdict", "reason"), FOUND)
def test_every_finding_has_a_sentence(code: str, verdict: Verdict, reason: str) -> None:
    said = finding_sentence(Finding(code, verdict, {"reason": reason} if reason else {}))
    assert len(said) > 15
    assert "{" not in said


@pytest.mark.parametrize("reason", sorted(set(SIGNATURE_REASONS)))
def test_every_reason_of_a_signature_has_a_sentence(reason: str) -> None:
    for code in ("signature", "trust-list-signature"):
        plain = finding_sentence(fails(code))
        assert len(finding_sentence(fails(code, reason=reason))) > len(plain)


@pytest.mark.parametrize("code", NEVER_KNOWN)
def test_what_is_never_known_has_a_sentence(code: str) -> None:
    assert finding_sentence(unknown(code))


@pytest.mark.parametrize("code", POLICY_LINES)
@pytest.mark.parametrize("verdict", [Verdict.HOLDS, Verdict.FAILS])
def test_every_line_of_a_policy_has_a_sentence(code: str, verdict: Verdict) -> None:
    assert finding_sentence(Finding(code, verdict, {}))


@pytest.mark.parametrize("standing", list(Standing))
def test_every_standing_has_a_sentence(standing: Standing) -> None:
    assert standing_sentence(standing.value, "S-01").count(".") >= 1


def test_a_code_without_words_is_ours_to_mend() -> None:
    with pytest.raises(KeyError):
        finding_sentence(fails("no-such-code"))


def test_the_page_has_the_same_phrases_by_key() -> None:
    phrases = finding_phrases()
    for code, verdict, reason in FOUND:
        if f"examine.{code}.{verdict.value}" not in phrases:
            continue
        said = finding_sentence(Finding(code, verdict, {"reason": reason} if reason else {}))
        own, shared = f"examine.{code}.reason.{reason}", f"examine.reason.{reason}"
        parts = [phrases[f"examine.{code}.{verdict.value}"]]
        parts += [phrases[own] if own in phrases else phrases[shared]] if reason else []
        assert re.sub(r"\{[a-z_]+\}", "", " ".join(parts)).strip() == said
    for each in Standing:
        assert {f"examine.standing.{each.value}", f"examine.standing-means.{each.value}"} <= set(
            phrases
        )


def test_a_stranger_cannot_steer_the_terminal() -> None:
    said = finding_sentence(fails("shape", reason="unknown-member", detail="\x1b[2Jpay\nme"))
    assert "\x1b" not in said
    assert "\n" not in said


def test_evidence_with_one_verdict_is_counted_in_one_line() -> None:
    many = [unknown("evidence", digest=str(n)) for n in range(3)]
    assert finding_lines(many) == [
        "not known       The record names 3 pieces of evidence that are not at hand."
    ]
    alien = fails("evidence", digest="d", reason="not-of-this-record")
    assert finding_lines([*many, alien])[1] == finding_line(alien)
    assert finding_lines(many[:1]) == [finding_line(many[0])]


def test_a_record_says_what_for_and_whatever_limits_it() -> None:
    plain = signed(
        decided(level="beside", steps=("boil/fill",), limits=("Only by day",), override="No vessel")
    )
    lines = record_lines(CompletionRecord.from_plain(plain))
    said = "\n".join(lines)
    for each in plain["credentialSubject"]["scope"]["procedures"]:
        assert each["title"] in said
    for word in ("may work beside a named person", "boil/fill", "Only by day", "No vessel"):
        assert word in said
    assert "may do this alone" not in said
    plain["credentialSubject"]["scope"]["title"] = "x\x1b[2J\ny"
    first = record_lines(CompletionRecord.from_plain(plain))[0]
    assert first.isprintable()
