"""Signing: only when the policy is met, and each refusal names its line."""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from basinside.pipeline.entering import attempt_of, save
from basinside.pipeline.forms import opened_form
from tests.cli.run import Ran, basinside, edited, evidence, phrases, sign
from tests.make_sample_evidence import SAT_ON, right_answers

BOIL = "bag-mask-silicone-boil"


def changed(files: list[Path], into: Path, which: str, **changes: Any) -> list[Path]:
    """The files with those whose name holds a text edited."""
    return [edited(each, into, **changes) if which in each.name else each for each in files]


def boil_runs(files: list[Path]) -> list[Path]:
    return [each for each in files if f"-{BOIL}-" in each.name]


def refused_lines(ran: Ran) -> list[str]:
    return [each for each in ran.lines if each.startswith("Refused: ")]


def mistaken(clinic: Path, into: Path) -> Path:
    """An attempt of M-12 with every answer left open."""
    phrase = phrases(clinic)["Marking phrase"]
    form = opened_form(clinic, "core", "A", phrase=phrase)
    answers = tuple(() for _ in form.document["items"])
    return save(attempt_of(form, answers, learner="M-12", on=SAT_ON, language="en"), into)


def second_attempt(clinic: Path, into: Path) -> Path:
    """Another passed attempt of M-12, one question answered otherwise."""
    phrase = phrases(clinic)["Marking phrase"]
    form = opened_form(clinic, "core", "A", phrase=phrase)
    answers = tuple(tuple(sorted(each)) for each in right_answers(clinic, phrase))
    later = SAT_ON.replace(day=17)
    return save(attempt_of(form, answers, learner="M-12", on=later, language="en"), into)


Make = Callable[[Path, list[Path], Path], list[Path]]
SETS: list[tuple[str, Make]] = [
    (
        "Knowledge: core was not passed.",
        lambda clinic, files, into: [mistaken(clinic, into), *files[:-1]],
    ),
    (
        "Knowledge: older than 90 days.",
        lambda _, files, into: changed(files, into, ".attempt.", date="2026-08-21"),
    ),
    (
        "Attempts here: 2, but only 1 allowed.",
        lambda clinic, files, into: [*files, second_attempt(clinic, into)],
    ),
    (
        f"Practice, {BOIL}: runs that count: 2; 3 asked.",
        lambda _, files, into: changed(files, into, f"{BOIL}-2026-11-13", help=True),
    ),
    (
        f"Practice, {BOIL}: runs in real work: 1; 2 asked.",
        lambda _, files, into: changed(files, into, f"{BOIL}-2026-11-09", setting="simulated"),
    ),
    (
        f"Practice, {BOIL}: different observers: 1; 2 asked.",
        lambda _, files, into: changed(
            files, into, f"{BOIL}-2026-11-04", observer_staff_code="S-02"
        ),
    ),
    (
        f"Practice, {BOIL}: different days: 1; 2 asked.",
        lambda _, files, into: changed(files, into, f"-{BOIL}-", date="2026-11-04"),
    ),
    (
        f"Practice, {BOIL}: older than 90 days.",
        lambda _, files, into: changed(files, into, f"{BOIL}-2026-11-04", date="2026-08-21"),
    ),
    (
        "Some evidence is of somebody else than M-12: M-15.",
        lambda clinic, files, _: [*files, *evidence(clinic, "M-15-bag")],
    ),
    (
        "The same evidence was given more than once. 1 too many.",
        lambda _, files, __: [*files, files[0]],
    ),
    (
        "The same evidence was given more than once. Two sheets are of one run",
        lambda _, files, into: [*files, second_sheet(files, into)],
    ),
    (
        "Some evidence is of 2026-11-21, later than the day of signing (2026-11-20).",
        lambda _, files, into: changed(files, into, f"{BOIL}-2026-11-13", date="2026-11-21"),
    ),
]


def second_sheet(files: list[Path], into: Path) -> Path:
    """The first run of boiling once more, on the sheet of another observer."""
    first = next(each for each in files if f"{BOIL}-2026-11-04" in each.name)
    return edited(first, into, observer_staff_code="S-03", comments="Seen from the door.")


def with_start(files: list[Path], into: Path) -> list[Path]:
    """Runs of one procedure at different times, so that one day holds them all."""
    out = []
    for number, each in enumerate(files):
        if f"-{BOIL}-" in each.name:
            out.append(edited(each, into, start=f"0{number % 3 + 6}:00"))
        else:
            out.append(each)
    return out


@pytest.mark.parametrize(("says", "make"), SETS, ids=[says for says, _ in SETS])
def test_one_line_fails_alone_and_is_named(
    clinic: Path, tmp_path: Path, says: str, make: Make
) -> None:
    given, into = tmp_path / "given", tmp_path / "apart"
    given.mkdir()
    into.mkdir()
    files = with_start(evidence(clinic), given)
    ran = sign(clinic, tmp_path / "records", make(clinic, files, into))
    assert ran.code == 1, ran.said
    refused = refused_lines(ran)
    assert len(refused) == 1, ran.said
    assert refused[0].startswith(f"Refused: {says}")
    assert ran.lines[-1] == "Nothing was signed."
    assert not (tmp_path / "records").exists()


def test_what_needs_a_register_is_not_judged_here(clinic: Path, tmp_path: Path) -> None:
    ran = sign(clinic, tmp_path, evidence(clinic))
    open_lines = [each for each in ran.lines if each.startswith("not judged here")]
    assert len(open_lines) == 4
    said = "\n".join(open_lines)
    for word in ("Attempts at core", "observers", "within 3 months", "way back"):
        assert word in said


def test_a_record_says_who_what_and_until_when(record: Path) -> None:
    plain = json.loads(record.read_text(encoding="utf-8"))
    subject = plain["credentialSubject"]
    assert subject["identifier"][0]["identityHash"] == "M-12"
    assert (plain["validFrom"][:10], plain["validUntil"][:10]) == ("2026-11-20", "2027-11-20")
    assert plain["issuer"]["name"] == "S-01"
    assert len(plain["evidence"]) == 13
    assert "override" not in subject


def test_the_same_evidence_makes_the_same_bytes(clinic: Path, record: Path, tmp_path: Path) -> None:
    assert sign(clinic, tmp_path, list(reversed(evidence(clinic)))).code == 0
    assert (tmp_path / record.name).read_bytes() == record.read_bytes()


def test_a_reason_overrides_a_line_and_shows_in_the_record(clinic: Path, tmp_path: Path) -> None:
    files = [each for each in evidence(clinic) if f"{BOIL}-2026-11-13" not in each.name]
    assert sign(clinic, tmp_path, files).code == 1
    reason = "One run was seen on paper; the sheet is in the folder."
    ran = sign(clinic, tmp_path, files, "--override", reason)
    assert ran.code == 0, ran.said
    plain = json.loads(next(tmp_path.glob("*.record.json")).read_text(encoding="utf-8"))
    assert plain["credentialSubject"]["override"] == reason


def test_no_reason_overrides_whose_evidence_it_is(clinic: Path, tmp_path: Path) -> None:
    files = [*evidence(clinic), *evidence(clinic, "M-15-bag")]
    ran = sign(clinic, tmp_path, files, "--override", "It is fine.")
    assert ran.code == 1
    assert "somebody else" in refused_lines(ran)[0]


def test_a_reason_that_nothing_needed_is_not_in_the_record(clinic: Path, tmp_path: Path) -> None:
    assert sign(clinic, tmp_path, evidence(clinic), "--override", "Just in case.").code == 0
    plain = json.loads(next(tmp_path.glob("*.record.json")).read_text(encoding="utf-8"))
    assert "override" not in plain["credentialSubject"]


def test_nobody_signs_for_themselves(clinic: Path, tmp_path: Path) -> None:
    ran = sign(clinic, tmp_path, evidence(clinic), "--learner", "S-01")
    assert ran.code == 1
    assert "Refused: S-01 cannot sign for themselves." in ran.said


def test_beside_somebody_names_the_steps(clinic: Path, tmp_path: Path) -> None:
    files = evidence(clinic)
    assert sign(clinic, tmp_path, files, "--beside", "S-02").code == 1
    ran = sign(
        clinic, tmp_path, files, "--beside", "S-02", "--steps", f"{BOIL}/wash",
        "--until", "2026-12-31", "--limits", "Day shift only.",
    )  # fmt: skip
    assert ran.code == 0, ran.said
    plain = json.loads(next(tmp_path.glob("*.record.json")).read_text(encoding="utf-8"))
    subject = plain["credentialSubject"]
    assert (subject["level"], subject["steps"]) == ("beside", [f"{BOIL}/wash"])
    assert subject["limits"] == ["Works beside S-02 only.", "Day shift only."]
    assert plain["validUntil"][:10] == "2026-12-31"


def test_a_step_that_is_not_there_is_refused(clinic: Path, tmp_path: Path) -> None:
    ran = sign(clinic, tmp_path, [], "--beside", "S-02", "--steps", f"{BOIL}/fly")
    assert (ran.code, len(ran.lines)) == (1, 1)


def test_a_self_test_is_no_evidence(clinic: Path, tmp_path: Path) -> None:
    attempt = next(each for each in evidence(clinic) if ".attempt." in each.name)
    practice = edited(
        attempt, tmp_path, kind="self-test", id="cleaning", form=None, form_digest=None
    )
    ran = sign(clinic, tmp_path / "records", [practice])
    assert ran.code == 1
    assert len(ran.lines) == 1
    assert ran.said.startswith(f"{practice.name}: this is a self-test on cleaning.")


def test_what_became_of_it_for_a_tool(clinic: Path, tmp_path: Path) -> None:
    ran = sign(clinic, tmp_path, [], "--json")
    told = json.loads(ran.said)
    assert told["signed"] is None
    assert "knowledge-passed" in {each["code"] for each in told["refused_by"]}


def test_an_unknown_scope_names_those_there_are(clinic: Path, tmp_path: Path) -> None:
    ran = sign(clinic, tmp_path, [], "--scope", "scopes")
    assert ran.code == 1
    assert "bag-masks" in ran.said


def test_evidence_on_something_else_is_refused_whatever_the_reason(
    clinic: Path, tmp_path: Path
) -> None:
    """What the scope and its policy do not ask for would only look like evidence."""
    known = phrases(clinic)
    ran = basinside(
        "sign", "--folder", clinic, "--scope", BOIL, "--learner", "M-12", "--override", "Why",
        "--key", clinic / "quizzes/sample-evidence/S-01.key.json", "--on", "2026-11-20",
        "--phrase", known["Key phrase of S-01"], "--marking-phrase", known["Marking phrase"],
        "--into", tmp_path / "records", *evidence(clinic),
    )  # fmt: skip
    assert ran.code == 1
    assert (
        f"Refused: Some evidence is on something else than {BOIL} and its policy:"
        " bag-mask-silicone-soak, bag-mask-silicone-steam, bag-mask-vinyl-soak."
    ) in refused_lines(ran)
    assert not (tmp_path / "records").exists()


def test_an_unlisted_key_does_not_sign(clinic: Path, tmp_path: Path) -> None:
    made = basinside("key", "new", "--as", "S-09", "--into", tmp_path, "--on", "2026-10-01")
    phrase = next(each for each in made.lines if each.startswith("Key phrase: "))[12:]
    ran = sign(
        clinic, tmp_path, evidence(clinic), "--key", tmp_path / "S-09.key.json",
        "--phrase", phrase,
    )  # fmt: skip
    assert ran.code == 1
    assert refused_lines(ran) == ["Refused: The key of S-09 is not on the trust list as in use."]
