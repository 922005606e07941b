"""Folders are read without following links; what is written is whole and overwrites nothing."""

import os
from pathlib import Path

import pytest

from basinside.files import (
    FolderError,
    copy_tree,
    demo_folder,
    read_authored,
    read_file,
    read_if_there,
    read_theme,
    write_file,
    write_new_file,
)


@pytest.fixture
def clinic(tmp_path: Path) -> Path:
    root = tmp_path / "clinic"
    for name in ("content/handbook.yaml", "content/pictures/a.svg", "quizzes/questions/b.yaml"):
        (root / name).parent.mkdir(parents=True, exist_ok=True)
        (root / name).write_text(name, encoding="utf-8")
    return root


def test_what_is_authored_is_read_by_relative_path(clinic: Path) -> None:
    (clinic / "content" / "notes.docx").write_bytes(b"x")
    (clinic / "content" / ".hidden.yaml").write_bytes(b"x")
    (clinic / "content" / ".git").mkdir()
    (clinic / "content" / ".git" / "c.yaml").write_bytes(b"x")
    (clinic / "elsewhere").mkdir()
    (clinic / "elsewhere" / "d.yaml").write_bytes(b"x")
    assert read_authored(clinic) == {
        name: name.encode()
        for name in ("content/handbook.yaml", "content/pictures/a.svg", "quizzes/questions/b.yaml")
    }


def test_links_to_files_and_folders_are_not_followed(clinic: Path, tmp_path: Path) -> None:
    secret = tmp_path / "secret"
    secret.mkdir()
    (secret / "key.yaml").write_text("secret", encoding="utf-8")
    (clinic / "content" / "key.yaml").symlink_to(secret / "key.yaml")
    (clinic / "content" / "agents").symlink_to(secret)
    (clinic / "content" / "round").symlink_to(clinic / "content")
    assert b"secret" not in read_authored(clinic).values()
    assert len(read_authored(clinic)) == 3


def test_a_pipe_that_nobody_fills_is_not_waited_for(clinic: Path) -> None:
    os.mkfifo(clinic / "content" / "pipe.yaml")
    assert len(read_authored(clinic)) == 3


def test_a_folder_that_is_no_clinic_is_told_what_to_do(tmp_path: Path) -> None:
    with pytest.raises(FolderError, match=r"no content folder here.*basinside new"):
        read_authored(tmp_path)


def test_a_file_of_quizzes_alone_is_a_clinic_yet(tmp_path: Path) -> None:
    (tmp_path / "quizzes").mkdir()
    assert read_authored(tmp_path) == {}


def test_a_folder_far_too_large_is_refused(clinic: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    whole = sum(map(len, read_authored(clinic).values()))
    monkeypatch.setattr("basinside.files.MOST_BYTES", whole)
    assert read_authored(clinic)
    monkeypatch.setattr("basinside.files.MOST_BYTES", whole - 1)
    with pytest.raises(FolderError, match="together; is this a clinic"):
        read_authored(clinic)


def test_a_file_is_read_or_the_reason_is_said(tmp_path: Path) -> None:
    (tmp_path / "a").write_bytes(b"\0\xff")
    assert read_file(tmp_path / "a") == b"\0\xff"
    assert read_if_there(tmp_path / "b") is None
    with pytest.raises(FolderError, match="this is a folder"):
        read_file(tmp_path)
    with pytest.raises(FolderError, match="cannot be read"):
        read_file(tmp_path / "b")


def test_a_file_is_written_with_the_folders_above(tmp_path: Path) -> None:
    path = tmp_path / "a" / "b" / "c.txt"
    write_file(path, "one\ntwo é\n")
    assert path.read_bytes() == "one\ntwo é\n".encode()
    write_file(path, b"three")
    assert path.read_bytes() == b"three"
    assert [each.name for each in path.parent.iterdir()] == ["c.txt"]


def test_a_private_file_is_for_its_owner_alone(tmp_path: Path) -> None:
    write_file(tmp_path / "key", "x", private=True)
    write_file(tmp_path / "page", "x")
    assert (tmp_path / "key").stat().st_mode & 0o777 == 0o600
    assert (tmp_path / "page").stat().st_mode & 0o777 == 0o644


def test_a_cut_leaves_the_old_file_whole(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "log"
    write_file(path, "old")

    def cut(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(Path, "replace", cut)
    with pytest.raises(FolderError, match=r"cannot be written \(No space left"):
        write_file(path, "new")
    assert path.read_text(encoding="utf-8") == "old"
    assert [each.name for each in tmp_path.iterdir()] == ["log"]


def test_a_cut_by_hand_leaves_nothing_behind(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def stopped(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(Path, "replace", stopped)
    with pytest.raises(KeyboardInterrupt):
        write_file(tmp_path / "log", "new")
    assert list(tmp_path.iterdir()) == []


def test_a_new_file_overwrites_nothing(tmp_path: Path) -> None:
    write_new_file(tmp_path / "a", "one")
    with pytest.raises(FolderError, match="is there already; nothing was overwritten"):
        write_new_file(tmp_path / "a", "two")
    assert (tmp_path / "a").read_text(encoding="utf-8") == "one"


def test_a_new_file_does_not_write_through_a_link(tmp_path: Path) -> None:
    (tmp_path / "a").symlink_to(tmp_path / "target")
    with pytest.raises(FolderError, match="is there already"):
        write_new_file(tmp_path / "a", "two")
    assert not (tmp_path / "target").exists()


def test_a_folder_is_copied_into_a_new_one_only(clinic: Path, tmp_path: Path) -> None:
    (clinic / "content" / "__pycache__").mkdir()
    new = tmp_path / "new"
    copy_tree(clinic, new, {"content/handbook.yaml": "content/renamed.yaml"})
    assert (new / "content" / "renamed.yaml").is_file()
    assert not (new / "content" / "handbook.yaml").exists()
    assert not (new / "content" / "__pycache__").exists()
    with pytest.raises(FolderError, match="not empty; name a new folder"):
        copy_tree(clinic, new)


def test_the_demonstration_and_the_theme_are_found() -> None:
    assert (demo_folder() / "content" / "handbook.yaml").is_file()
    theme = read_theme()
    assert {"css/order.txt", "js/order.txt", "templates/start.html"} <= set(theme)
    assert not [name for name in theme if os.sep in name and os.sep != "/"]
