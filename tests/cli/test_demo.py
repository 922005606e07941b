"""The first two commands of a newcomer: demo and new."""

import subprocess
import sys
from pathlib import Path

from tests.built import CHECKOUT, files
from tests.cli.run import basinside


def in_a_process(*arguments: object, cwd: Path) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "basinside", *map(str, arguments)],
        cwd=cwd,
        check=False,
        capture_output=True,
        text=True,
    )


def test_the_demonstration_goes_the_whole_path_and_again(tmp_path: Path) -> None:
    first = in_a_process("demo", cwd=tmp_path)
    assert first.returncode == 0, first.stdout + first.stderr
    folder = tmp_path / "basinside-demo"
    assert (folder / "site" / "index.html").is_file()
    record = folder / "records" / "M-12-bag-masks-2026-11-20.record.json"
    before = record.read_bytes()
    for word in (str(folder / "site" / "index.html"), "passed", "demonstration key", record.name):
        assert word in first.stdout
    again = in_a_process("demo", cwd=tmp_path)
    assert again.returncode == 0, again.stdout + again.stderr
    assert record.read_bytes() == before


def test_what_opens_the_forms_is_never_built(tmp_path: Path) -> None:
    ran = in_a_process("demo", "shown", cwd=tmp_path)
    assert ran.returncode == 0, ran.stdout + ran.stderr
    site = files(tmp_path / "shown" / "site")
    assert "trust.json" in site
    assert not [name for name in site if "sample" in name or name.endswith(".key.json")]
    told = (CHECKOUT / "quizzes/sample-evidence/DEMO-PHRASES.txt").read_text(encoding="utf-8")
    secrets = [line.split("  ")[-1].strip().encode() for line in told.splitlines() if "  " in line]
    assert len(secrets) == 6
    for name, raw in site.items():
        for secret in secrets:
            assert secret not in raw, name


def test_the_evidence_in_the_tree_is_on_what_the_content_says_now(clinic: Path) -> None:
    for name in ("quizzes/sealed", "quizzes/sample-evidence", "content/trust.json"):
        kept, made = CHECKOUT / name, clinic / name
        same = (
            kept.read_bytes() == made.read_bytes() if kept.is_file() else files(kept) == files(made)
        )
        assert same, "make it again: python tests/make_sample_evidence.py"


def test_the_demonstration_takes_no_folder_of_yours(tmp_path: Path) -> None:
    (tmp_path / "mine").mkdir()
    (tmp_path / "mine" / "letter.txt").write_text("dear")
    ran = basinside("demo", tmp_path / "mine")
    assert (ran.code, len(ran.lines)) == (2, 1)
    assert [each.name for each in (tmp_path / "mine").iterdir()] == ["letter.txt"]


def test_a_new_clinic_is_sound_and_builds_without_a_word(tmp_path: Path) -> None:
    folder = tmp_path / "my-clinic"
    assert basinside("new", folder).code == 0
    checked = basinside("check", "--folder", folder, "--all")
    assert (checked.code, checked.said) == (0, "Nothing is wrong.\n")
    built = subprocess.run(
        [sys.executable, "-m", "mkdocs", "build", "--strict", "--quiet"],
        cwd=folder,
        check=False,
        capture_output=True,
        text=True,
    )
    assert (built.returncode, built.stdout, built.stderr) == (0, "", "")
    assert (folder / "site" / "procedures" / "sponge-forceps-boil.html").is_file()
    assert (folder / "schemas" / "handbook.schema.json").is_file()
    assert not (folder / "content" / "trust.json").exists()
    assert not (folder / "site" / "trust.json").exists()


def test_a_new_clinic_overwrites_nothing(tmp_path: Path) -> None:
    (tmp_path / "letter.txt").write_text("dear")
    assert basinside("new", tmp_path).code == 2


def test_every_command_says_what_it_does() -> None:
    told = basinside("--help")
    commands = [
        line.split()[0] for line in told.lines if line.startswith("  ") and "  " in line[2:]
    ]
    assert {"demo", "new", "sign", "examine", "seal"} <= set(commands)
    for name in ("sign", "examine", "seal", "form", "score", "trust", "key", "changes", "demo"):
        helped = basinside(name, "--help")
        assert helped.code == 0
        assert len(helped.lines) > 4


def test_misuse_is_two() -> None:
    assert basinside("sign").code == 2
    assert basinside("examine", "no-such-file.json").code == 2
    assert basinside("no-such-command").code == 2
