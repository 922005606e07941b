"""What `check` prints besides the problems: the list of rules, the waivers, what a path means."""

from __future__ import annotations

import difflib
import textwrap
from collections.abc import Iterable
from datetime import date
from pathlib import Path

from basinside.check.explain import rule_lines
from basinside.check.waivers import all_waivers
from basinside.load.marked_yaml import locate
from basinside.model.entry import Waiver
from basinside.pipeline.build import Clinic, place_problems
from basinside.problem import Level
from basinside.render.report_for_people import grouped_lines, hidden_line
from basinside.render.waiver_list import (
    WaiverLine,
    waiver_lines,
    waiver_list_data,
    waiver_list_lines,
)

__all__ = [
    "all_rules",
    "grouped_lines",
    "hidden_line",
    "path_below",
    "waiver_list_data",
    "waiver_list_lines",
    "waivers_of",
]

_LEVELS = {Level.STOP: "stop", Level.WARN: "warn", Level.INFO: "info", Level.NEVER: "never"}


def all_rules(width: int = 80) -> list[str]:
    """Return every id with its level and what it says, two lines or more each."""
    lines: list[str] = []
    for each in rule_lines():
        day = ", with a day" if each.dated else ""
        lines.append(f"{each.id} ({_LEVELS[each.level]}{day})")
        lines.extend(
            textwrap.wrap(each.says, max(40, width), initial_indent="  ", subsequent_indent="  ")
        )
    return lines


def waivers_of(clinic: Clinic, today: date | None) -> tuple[WaiverLine, ...]:
    """Return every waiver with where it stands; ended ones first when the day is given."""
    found: list[tuple[Waiver, int, int]] = []
    for each in all_waivers(clinic.content):
        place = each.waiver.place
        marks = locate(clinic.raw.get(place.file, b""), [place])
        found.append((each.waiver, *marks[place]))
    return waiver_lines(found, place_problems(clinic), today)


def path_below(clinic: Clinic, written: str) -> tuple[str, str]:
    """Return the beginning of file names that an author's path means, and the nearest when none.

    A path may be typed from the clinic's folder, from where one stands, or whole; with either
    slash, or with part of a file's name.
    """
    plain = written.replace("\\", "/").removeprefix("./").rstrip("/")
    names = _named(clinic)
    if any(name.startswith(plain) for name in names):
        return plain, ""
    try:
        inside = Path(written).resolve().relative_to(clinic.root.resolve()).as_posix()
    except (ValueError, OSError):
        inside = plain
    inside = "" if inside == "." else inside
    if any(name.startswith(inside) for name in names):
        return inside, ""
    known = {name: None for each in names for name in (_folder(each), each)}
    last = {name.rpartition("/")[2]: name for name in known}
    near = difflib.get_close_matches(plain, known, 1, 0.6)
    near = near or [last[one] for one in difflib.get_close_matches(plain, last, 1, 0.6)]
    return inside, near[0] if near else "?"


def _folder(name: str) -> str:
    return name.rpartition("/")[0] or name


def _named(clinic: Clinic) -> Iterable[str]:
    """Return the files that are there, and those that a problem says are not."""
    return dict.fromkeys((*clinic.raw, *(each.place.file for each in clinic.problems)))
