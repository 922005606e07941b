"""Key files and the trust list, from making to losing."""

import json
import re
import shutil
from pathlib import Path

import pytest

from basinside.model.key_file import KeyFile
from tests.cli.run import Ran, basinside, evidence, phrases, sign


@pytest.fixture
def own(clinic: Path, tmp_path: Path) -> Path:
    """A copy of the clinic that may be changed."""
    folder = tmp_path / "own"
    for name in ("content", "quizzes"):
        shutil.copytree(clinic / name, folder / name)
    return folder


def phrase_in(ran: Ran) -> str:
    found = re.search(r"Key phrase: ([a-z ]+)\n", ran.said)
    assert found, ran.said
    return found[1]


def trust(own: Path, *arguments: object) -> Ran:
    known = phrases(own)
    root = own / "quizzes/sample-evidence/root.key.json"
    return basinside("trust", *arguments, "--folder", own, "--root-key", root,
                     "--phrase", known["Root key phrase"])  # fmt: skip


def test_a_key_is_sealed_under_a_drawn_phrase(tmp_path: Path) -> None:
    ran = basinside("key", "new", "--as", "S-05", "--into", tmp_path, "--on", "2026-11-20")
    path = tmp_path / "S-05.key.json"
    key = KeyFile.from_plain(json.loads(path.read_text(encoding="utf-8")))
    assert (key.staff_code, key.role, key.made) == ("S-05", "supervisor", "2026-11-20")
    assert key.demo is None
    assert key.envelope.header.iterations == 600_000
    assert phrase_in(ran) not in path.read_text(encoding="utf-8")
    assert path.stat().st_mode & 0o077 == 0
    assert basinside("key", "new", "--as", "S-05", "--into", tmp_path).code == 2


def test_two_keys_differ(tmp_path: Path) -> None:
    said = [basinside("key", "new", "--as", f"S-0{n}", "--into", tmp_path).said for n in (5, 6)]
    assert len({re.search(r"did:key:\S+", each)[0] for each in said}) == 2  # type: ignore[index]


def test_an_invented_clinic_marks_its_keys(clinic: Path, tmp_path: Path) -> None:
    ran = basinside("key", "new", "--as", "S-05", "--into", tmp_path, "--clinic", clinic)
    assert "demonstration key" in ran.said
    assert json.loads((tmp_path / "S-05.key.json").read_text())["demo"] is True


def test_a_key_needs_an_owner(tmp_path: Path) -> None:
    assert basinside("key", "new", "--into", tmp_path).code == 2
    ran = basinside("key", "new", "--as", "Mary", "--into", tmp_path)
    assert ran.code == 2
    assert "“Mary” is no staff code" in ran.said


def test_a_trust_list_from_nothing(own: Path) -> None:
    (own / "content/trust.json").unlink()
    assert basinside("trust", "show", "--folder", own).code == 1
    begun = trust(own, "init", "--on", "2026-10-01")
    assert begun.code == 0, begun.said
    assert phrases(own)["Root fingerprint"] in begun.said
    assert trust(own, "init").code == 2
    signer = own / "quizzes/sample-evidence/S-01.key.json"
    assert trust(own, "add", "--key", signer, "--on", "2026-10-02").code == 0
    shown = basinside("trust", "show", "--folder", own)
    assert "  S-01, supervisor, from 2026-10-02" in shown.said
    assert "Trust list of highfell, signed on 2026-10-02." in shown.said
    assert trust(own, "add", "--key", signer).lines == ["This key is listed already."]


def test_a_retired_key_keeps_earlier_records_good(own: Path, record: Path) -> None:
    assert trust(own, "retire", "S-01", "--on", "2026-11-25").code == 0
    assert basinside("examine", record, own, "--on", "2026-12-01").code == 0
    ran = sign(own, own / "records", evidence(own), on="2026-11-26")
    assert ran.code == 1
    assert "not on the trust list as in use" in ran.said


def test_a_lost_key_takes_its_records_with_it(own: Path, record: Path) -> None:
    assert trust(own, "lose", "S-01", "--on", "2026-12-24").code == 0
    ran = basinside("examine", record, own, "--on", "2026-12-01")
    assert ran.code == 1
    assert any("reported lost on 2026-12-24" in each for each in ran.lines)
    assert ran.lines[-1].startswith("This record cannot be relied on.")


@pytest.mark.parametrize("word", ["retire", "lose"])
def test_nobody_unlisted_ends(own: Path, word: str) -> None:
    ran = trust(own, word, "S-77")
    assert (ran.code, len(ran.lines)) == (1, 1)
    assert "S-77 has no key in use" in ran.said


def test_a_supervisors_key_signs_no_trust_list(own: Path) -> None:
    signer = own / "quizzes/sample-evidence/S-01.key.json"
    ran = basinside("trust", "retire", "S-01", "--folder", own, "--root-key", signer,
                    "--phrase", phrases(own)["Key phrase of S-01"])  # fmt: skip
    assert (ran.code, len(ran.lines)) == (1, 1)
    assert "root-key" in ran.said


def test_a_root_key_signs_no_record_and_is_never_listed(own: Path) -> None:
    root = own / "quizzes/sample-evidence/root.key.json"
    ran = sign(own, own, [], "--key", root, "--phrase", phrases(own)["Root key phrase"])
    assert (ran.code, len(ran.lines)) == (1, 1)
    assert trust(own, "add", "--key", root, "--role", "supervisor").code == 1


def test_an_altered_list_is_not_signed_again(own: Path) -> None:
    path = own / "content/trust.json"
    plain = json.loads(path.read_text(encoding="utf-8"))
    plain["signers"][0]["staff_code"] = "S-66"
    path.write_text(json.dumps(plain), encoding="utf-8")
    ran = trust(own, "retire", "S-66")
    assert (ran.code, len(ran.lines)) == (1, 1)
    assert "not as its root key signed it" in ran.said


def test_a_wrong_key_phrase_is_one_plain_line(clinic: Path, tmp_path: Path) -> None:
    ran = sign(clinic, tmp_path, [], "--phrase", phrases(clinic)["Root key phrase"])
    assert (ran.code, len(ran.lines)) == (1, 1)
    assert "does not open it" in ran.said
