"""The demonstration clinic with one mistake in it, what the check then says, and a page of that."""

from __future__ import annotations

import difflib
import re
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Any

import yaml

from tests.built import CHECKOUT
from tests.check.clinic import files_under, look_at

FOLDER = Path(__file__).resolve().parent
PAGE = FOLDER / "ten-mistakes.md"
BEGINNING = """\
# Ten mistakes of a tired author

Everybody makes them, and most at the end of a long day. Each was made in the demonstration clinic:
here are the lines that were changed, and what `basinside check` says then, with its mend.
"""


@cache
def mistakes() -> tuple[Mapping[str, Any], ...]:
    """Return the mistakes as they stand in their file; not to be changed."""
    return tuple(yaml.safe_load((FOLDER / "mistakes.yaml").read_text(encoding="utf-8")))


@cache
def demonstration() -> dict[str, bytes]:
    """Return the files of the demonstration clinic by their paths; not to be changed."""
    files = {
        f"{name}/{path}": file
        for name in ("content", "quizzes")
        for path, file in files_under(CHECKOUT / name).items()
    }
    return {path: file for path, file in files.items() if "sample-evidence" not in path}


@cache
def said_before() -> frozenset[str]:
    """Return what is said of the demonstration clinic without a mistake, but for the places."""
    return frozenset(_unplaced(line) for line in look_at(demonstration()).lines)


def said_of(mistake: Mapping[str, Any]) -> list[str]:
    """Return the lines that the check says of a mistake."""
    return [
        line
        for line in look_at(with_mistake(mistake)).lines
        if _unplaced(line) not in said_before()
    ]


def _unplaced(line: str) -> str:
    return line.partition(": ")[2]


def with_mistake(mistake: Mapping[str, Any]) -> dict[str, bytes]:
    """Return the clinic's files with a mistake in one of them."""
    file, text = changed(mistake)
    return {**demonstration(), file: text.encode()}


def changed(mistake: Mapping[str, Any]) -> tuple[str, str]:
    """Return which file a mistake changes and what stands in it then.

    `replace` puts new words for old ones that stand there once; `cut` takes a step out; `move` puts
    a step behind another; `copy` puts an item there once more, under another id.
    """
    (kind,) = {"replace", "cut", "move", "copy"} & set(mistake)
    change = mistake[kind]
    text = demonstration()[change["file"]].decode()
    if kind == "replace":
        assert text.count(change["old"]) == 1, f"{change['old']!r} stands there more than once"
        return change["file"], text.replace(change["old"], change["new"])
    lines = text.splitlines(keepends=True)
    block = _block(lines, change.get("step") or change["item"])
    entry = lines[block]
    if kind == "copy":
        again = [
            line.replace(f"item: {change['item']}\n", f"item: {change['as']}\n") for line in entry
        ]
        lines[block.stop : block.stop] = again
        return change["file"], "".join(lines)
    del lines[block]
    if kind == "move":
        after = _block(lines, change["after"]).stop
        lines[after:after] = entry
    return change["file"], "".join(lines)


def _block(lines: list[str], name: str) -> slice:
    """Return the lines of a step or an item: up to the next one, or up to what is further out."""
    first = next(
        n for n, line in enumerate(lines) if re.fullmatch(rf" *- (step|item): {name}\n", line)
    )
    indent = len(lines[first]) - len(lines[first].lstrip())
    last = first + 1
    while last < len(lines) and len(lines[last]) - len(lines[last].lstrip()) > indent:
        last += 1
    return slice(first, last)


def page() -> str:
    """Return the page that shows all mistakes to authors."""
    told = [_told(n, mistake, said_of(mistake)) for n, mistake in enumerate(mistakes(), 1)]
    return "\n".join([BEGINNING, *told])


def _told(n: int, mistake: Mapping[str, Any], said: list[str]) -> str:
    file, text = changed(mistake)
    before = demonstration()[file].decode().splitlines()
    difference = list(difflib.unified_diff(before, text.splitlines(), n=1, lineterm=""))[2:]
    shown = ["…" if line.startswith("@@") else line for line in difference]
    return "\n".join(
        [
            f"## {n}. {mistake['mistake']}",
            "",
            mistake["story"],
            "",
            f"In `{file}`:",
            "",
            "```diff",
            *shown,
            "```",
            "",
            "The check says:",
            "",
            "```text",
            *said,
            "```",
            "",
        ]
    )
