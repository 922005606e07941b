"""Two clinics that are wrong in every way at once: what is said of them, and what should be.

``clinic`` can be read and breaks every rule; ``form`` holds files that cannot be read. Their
reports are kept as people see them, to be read from top to bottom.
"""

from __future__ import annotations

import json
import re
from functools import cache
from pathlib import Path
from typing import Any

from tests.cli.run import basinside

WRONG = Path(__file__).resolve().parent
CLINICS = ("clinic", "form")
TODAY = "2026-11-20"
COLUMNS = "100"
NAMED = re.compile(r"^ +\[([a-z-]+)\]$", re.MULTILINE)


def kept(clinic: str) -> Path:
    """Return the file that holds what should be said of a clinic."""
    return WRONG / f"{clinic}-report.txt"


@cache
def report(clinic: str) -> str:
    """Return what checking a clinic says, grouped for people, information too."""
    asked = ("--folder", WRONG / clinic, "--today", TODAY, "--all", "--grouped")
    return basinside("check", *asked, env={"COLUMNS": COLUMNS}).said


@cache
def told(clinic: str) -> tuple[dict[str, Any], ...]:
    """Return what checking a clinic tells a tool."""
    said = basinside("check", "--folder", WRONG / clinic, "--today", TODAY, "--json").said
    return tuple(json.loads(said))


def named(clinic: str) -> frozenset[str]:
    """Return the ids of the rules that a clinic's report names."""
    return frozenset(NAMED.findall(report(clinic)))
