"""A clinic with the least that loads, for tests of reading and of what follows from it.

It says too little for most rules; what rules are tried on is the clinic of tests/check/base.
"""

from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Any

from tests.check.clinic import CLOSED, Looked, changed_by, closed, files_under, look_at

__all__ = ["CLOSED", "Looked", "base_files", "closed", "closed_edition", "patched", "read"]

BASE = Path(__file__).parent / "base"


@cache
def base_files() -> dict[str, bytes]:
    """Return the files of the plain clinic; not to be changed."""
    return files_under(BASE)


@cache
def closed_edition() -> bytes:
    """Return the plain clinic's edition as it would be closed."""
    return closed(base_files())


def read(files: Mapping[str, bytes]) -> Looked:
    """Load files without asking the rules, and print each problem as an author would see it."""
    return look_at(files, rules=False)


def patched(case: Mapping[str, Any]) -> dict[str, bytes]:
    """Return the plain clinic's files with one case's changes, as for a case of a rule."""
    return changed_by(case, base_files(), closed_edition)
