"""A clinic's files as they stood at a git revision, read into memory."""

from __future__ import annotations

import io
import shutil
import subprocess
import tarfile
from pathlib import Path

from basinside.files import AUTHORED, LARGEST_READ_BYTES


def read_revision(root: Path, revision: str) -> dict[str, bytes] | str:
    """Return the authored files of a folder at a revision, or in a few words why there are none.

    Nothing is checked out and nothing is written. Links and files beyond the cap are left out.
    """
    git = shutil.which("git")
    if git is None:
        return "git is not installed here"
    if _run(git, root, ["rev-parse", "--git-dir"]) is None:
        return "the clinic's folder is in no git repository"
    asked = ["rev-parse", "--verify", "--quiet", "--end-of-options", f"{revision}^{{commit}}"]
    found = _run(git, root, asked)
    if found is None:
        return "git knows none of that name"
    commit = found.decode("ascii").strip()
    out: dict[str, bytes] = {}
    for folder in AUTHORED:
        packed = _run(git, root, ["archive", "--format=tar", commit, "--", folder])
        if packed is None:
            continue
        with tarfile.open(fileobj=io.BytesIO(packed)) as archive:
            for member in archive:
                stream = archive.extractfile(member) if member.isreg() else None
                if stream is not None and member.size <= LARGEST_READ_BYTES:
                    out[member.name] = stream.read()
    return out or "there were no content and quizzes folders at it"


def _run(git: str, root: Path, arguments: list[str]) -> bytes | None:
    done = subprocess.run(  # noqa: S603 - git, with a commit name that git itself resolved
        [git, "-C", str(root), *arguments], check=False, capture_output=True
    )
    return done.stdout if done.returncode == 0 else None
