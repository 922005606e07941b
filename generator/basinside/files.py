"""The only reader of folders and the only writer; it does not know what files mean."""

from __future__ import annotations

import contextlib
import os
import shutil
import stat
import tempfile
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Final

MOST_FILES: Final = 40_000
"""Files of one clinic; more means that the wrong folder was named (our own cap)."""
LARGEST_READ_BYTES: Final = 64_000_000
MOST_BYTES: Final = 400_000_000
"""All files of one clinic together: 1,000 procedures with closed editions are a tenth (our cap)."""
AUTHORED: Final = ("content", "quizzes")
READ_ENDINGS: Final = (".yaml", ".yml", ".svg", ".json", ".md", ".txt")


class FolderError(Exception):
    """A folder or file that cannot be read or written, in one sentence with the mend."""


def read_authored(root: Path) -> dict[str, bytes]:
    """Return every authored file below ``content/`` and ``quizzes/``, by relative path.

    Symbolic links are not followed, and pipes and devices, which might never end, are not opened.

    Raises:
        FolderError: when there is neither folder, or the folder is far too large.
    """
    if not any((root / each).is_dir() for each in AUTHORED):
        raise FolderError(
            f"{root}: there is no content folder here; go to your clinic's folder, or make one"
            " with “basinside new FOLDER”"
        )
    out: dict[str, bytes] = {}
    size = 0
    for top in AUTHORED:
        for path in sorted(_walk(root / top)):
            raw = out[path.relative_to(root).as_posix()] = _read(path)
            size += len(raw)
            if size > MOST_BYTES:
                raise FolderError(
                    f"{root}: its files are larger than {MOST_BYTES // 1_000_000} MB together;"
                    " is this a clinic?"
                )
            if len(out) > MOST_FILES:
                raise FolderError(f"{root}: more than {MOST_FILES} files; is this a clinic?")
    return out


def _walk(folder: Path) -> Iterator[Path]:
    for where, folders, names in os.walk(folder, followlinks=False):
        folders[:] = sorted(each for each in folders if not each.startswith("."))
        for name in names:
            path = Path(where) / name
            hidden = name.startswith(".")
            if name.lower().endswith(READ_ENDINGS) and not hidden and _is_plain(path):
                yield path


def _is_plain(path: Path) -> bool:
    try:
        return stat.S_ISREG(path.lstat().st_mode)
    except OSError:
        return True  # reading it says why it cannot be read


def _read(path: Path) -> bytes:
    try:
        with path.open("rb") as stream:
            return stream.read(LARGEST_READ_BYTES + 1)
    except OSError as error:
        raise FolderError(f"{path}: cannot be read ({error.strerror})") from None


def holds_anything(folder: Path) -> bool:
    """Whether a folder is there and holds a file or folder that is not hidden."""
    try:
        return folder.is_dir() and any(not each.name.startswith(".") for each in folder.iterdir())
    except OSError as error:
        raise FolderError(f"{folder}: cannot be read ({error.strerror})") from None


def read_file(path: Path) -> bytes:
    """Return the bytes of one file.

    Raises:
        FolderError: when it cannot be read or is far too large.
    """
    if path.is_dir():
        raise FolderError(f"{path}: this is a folder, a file is needed")
    raw = _read(path)
    if len(raw) > LARGEST_READ_BYTES:
        raise FolderError(f"{path}: the file is larger than 64 MB")
    return raw


def read_if_there(path: Path) -> bytes | None:
    """Return the bytes of a file, or None when there is none."""
    return read_file(path) if path.is_file() else None


def write_file(path: Path, data: bytes | str, *, private: bool = False) -> None:
    """Write a file in one move, so that a cut never leaves half of it.

    Args:
        path: where; folders above are made.
        data: bytes, or text written as UTF-8 with line feeds.
        private: whether only this user may read it.

    Raises:
        FolderError: when it cannot be written.
    """
    raw = data.encode() if isinstance(data, str) else data
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        handle, name = tempfile.mkstemp(dir=path.parent, prefix=".", suffix=".part")
        try:
            with os.fdopen(handle, "wb") as stream:
                stream.write(raw)
            Path(name).chmod(0o600 if private else 0o644)
            Path(name).replace(path)
        except BaseException:
            with contextlib.suppress(OSError):
                Path(name).unlink()
            raise
    except OSError as error:
        raise FolderError(f"{path}: cannot be written ({error.strerror})") from None


def write_made(path: Path, data: bytes) -> None:
    """Write a file of a folder that is being built; unlike `write_file` it is not one move."""
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(data)


def write_new_file(path: Path, data: bytes | str, *, private: bool = False) -> None:
    """Write a file that must not exist yet.

    Raises:
        FolderError: when it exists already, or cannot be written.
    """
    if path.exists() or path.is_symlink():
        raise FolderError(f"{path}: is there already; nothing was overwritten")
    write_file(path, data, private=private)


def copy_tree(source: Path, target: Path, names: Mapping[str, str] | None = None) -> None:
    """Copy a folder into a new one.

    Raises:
        FolderError: when the target holds files already.
    """
    if target.exists() and (not target.is_dir() or any(target.iterdir())):
        raise FolderError(f"{target}: is there already and not empty; name a new folder")
    try:
        shutil.copytree(
            source,
            target,
            dirs_exist_ok=True,
            ignore=shutil.ignore_patterns("__pycache__", "*.pyc", ".*"),
        )
        for old, new in (names or {}).items():
            (target / old).rename(target / new)
    except OSError as error:
        raise FolderError(f"{target}: cannot be written ({error.strerror})") from None


def package_folder() -> Path:
    """Return the folder of the installed package."""
    return Path(__file__).parent


def demo_folder() -> Path:
    """Return the folder of the demonstration clinic: in the wheel, or in the checkout.

    Raises:
        FolderError: when this installation carries none.
    """
    carried = package_folder() / "demo"
    if (carried / "content" / "handbook.yaml").is_file():
        return carried
    checkout = package_folder().parent.parent
    if (checkout / "content" / "handbook.yaml").is_file():
        return checkout
    raise FolderError("this installation carries no demonstration clinic; install it again")


def theme_folder() -> Path:
    """Return the folder of the theme: the package ``basinside.theme``, wherever it lies."""
    beside = package_folder() / "theme"
    if (beside / "mkdocs_theme.yml").is_file():
        return beside
    return package_folder().parent.parent / "site_theme"


def read_theme() -> dict[str, str]:
    """Return the theme's files as text, by relative path."""
    folder = theme_folder()
    endings = (".html", ".css", ".js", ".svg", ".yaml", ".txt")
    return {
        path.relative_to(folder).as_posix(): path.read_text(encoding="utf-8")
        for path in sorted(folder.rglob("*"))
        if path.suffix in endings
    }


def holds_something(folder: Path) -> bool:
    """Return whether there is a file where the folder should be, or anything in it."""
    return not folder.is_dir() or any(folder.iterdir())


def names_in(folder: Path) -> tuple[Path, ...]:
    """Return the files of a folder, in order; none when there is no such folder."""
    return tuple(sorted(each for each in folder.glob("*") if each.is_file()))


def remove_file(path: Path) -> None:
    """Remove a file if it is there.

    Raises:
        FolderError: when it cannot be removed.
    """
    try:
        path.unlink(missing_ok=True)
    except OSError as error:
        raise FolderError(f"{path}: cannot be removed ({error.strerror})") from None
