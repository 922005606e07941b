"""Where a handbook is built to: nothing that somebody else put there is ever taken away."""

from pathlib import Path

import pytest

from tests.cli.run import basinside


@pytest.fixture
def clinic(tmp_path: Path) -> Path:
    folder = tmp_path / "clinic"
    basinside("new", folder)
    return folder


def test_a_folder_with_other_files_is_left_alone(clinic: Path, tmp_path: Path) -> None:
    stick = tmp_path / "stick"
    stick.mkdir()
    (stick / "letter.txt").write_text("keep")
    for asked in (
        ("build", "--folder", clinic, "--into", stick),
        ("demo", tmp_path / "demo", "--site", stick),
    ):
        told = basinside(*asked)
        assert told.code == 2
        assert "other files lie there" in told.said
        assert "new or empty" in told.said
    assert [each.name for each in stick.iterdir()] == ["letter.txt"]
    assert not (tmp_path / "demo").exists()


def test_the_folder_of_the_settings_is_left_alone_too(clinic: Path) -> None:
    (clinic / "site").mkdir()
    (clinic / "site" / "letter.txt").write_text("keep")
    assert basinside("build", "--folder", clinic).code == 1
    assert [each.name for each in (clinic / "site").iterdir()] == ["letter.txt"]


@pytest.mark.parametrize("where", ["", "..", "content", "content/figures", "quizzes"])
def test_the_clinic_is_never_built_over(clinic: Path, where: str) -> None:
    before = sorted(clinic.rglob("*"))
    told = basinside("build", "--folder", clinic, "--into", clinic / where)
    assert told.code == 2
    assert "the clinic's own files lie there" in told.said
    assert sorted(clinic.rglob("*")) == before


def test_a_file_is_no_folder(clinic: Path, tmp_path: Path) -> None:
    (tmp_path / "letter.txt").write_text("keep")
    told = basinside("build", "--folder", clinic, "--into", tmp_path / "letter.txt")
    assert told.code == 2
    assert "this is a file" in told.said
    assert (tmp_path / "letter.txt").read_text() == "keep"


def test_a_new_or_empty_folder_and_a_handbook_are_built_to(clinic: Path, tmp_path: Path) -> None:
    empty = tmp_path / "empty"
    empty.mkdir()
    (empty / ".hidden").write_text("")
    for into in (tmp_path / "new", tmp_path / "new", empty):
        assert basinside("build", "--folder", clinic, "--into", into).code == 0
        assert (into / "index.html").is_file()


@pytest.mark.parametrize("held", [b"{", b"\xff", b"[]", b"[" * 10_000 + b"]" * 10_000])
def test_a_trust_list_cut_short_stops_before_the_old_handbook_is_lost(
    clinic: Path, tmp_path: Path, held: bytes
) -> None:
    site = tmp_path / "site"
    assert basinside("build", "--folder", clinic, "--into", site).code == 0
    (clinic / "content" / "trust.json").write_bytes(held)
    checked = basinside("check", "--folder", clinic)
    assert checked.code == 1
    assert "content/trust.json:1:" in checked.said
    assert "[file-unreadable]" in checked.said
    assert basinside("build", "--folder", clinic, "--into", site).code == 1
    assert (site / "index.html").is_file()
