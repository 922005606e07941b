"""The files of the checkout that the house rules look at."""

import subprocess
from collections.abc import Iterator
from pathlib import Path

from tests.built import CHECKOUT

PACKAGE = CHECKOUT / "generator" / "basinside"
THEME = CHECKOUT / "site_theme"
NOT_OURS = {".git", ".venv", "site", "build", "dist", "node_modules", "__pycache__", "LICENSES"}


def ours(*suffixes: str, below: Path = CHECKOUT) -> Iterator[Path]:
    """Yield our files of these suffixes, in order; what is built or cached is not ours."""
    for path in sorted(below.rglob("*")):
        parts = path.relative_to(CHECKOUT).parts
        built = NOT_OURS & set(parts) or any(p.endswith(("_cache", ".egg-info")) for p in parts)
        if path.suffix in suffixes and path.is_file() and not built:
            yield path


def named(path: Path) -> str:
    """Return a file's name as messages say it."""
    return path.relative_to(CHECKOUT).as_posix()


def kept() -> list[str]:
    """Return the names of all files that git keeps, or of all files where there is no git."""
    asked = ["git", "ls-files", "--cached", "--others", "--exclude-standard"]
    if (CHECKOUT / ".git").exists():
        told = subprocess.run(asked, check=True, capture_output=True, text=True, cwd=CHECKOUT)
        return told.stdout.splitlines()
    return [named(path) for path in CHECKOUT.rglob("*") if path.is_file()]
