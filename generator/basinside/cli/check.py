"""The author's first command: check."""

from __future__ import annotations

import difflib
import gc
import json
import os
import shutil
import sys
from collections.abc import Iterable, Sequence
from datetime import date
from pathlib import Path
from typing import Any, Final

import click

from basinside.cli.typed import DAY, folder_option, say
from basinside.pipeline import build as pipeline
from basinside.pipeline import checking
from basinside.problem import Placed

ALL: Final = "all"
_INKS: Final[dict[str, dict[str, Any]]] = {
    "file": {"bold": True},
    "place": {"dim": True},
    "stop": {"fg": "red", "bold": True},
    "warn": {"fg": "yellow"},
    "info": {"dim": True},
    "waived": {"dim": True},
    "hint": {"fg": "green"},
    "rule": {"dim": True},
}


@click.command()
@folder_option
@click.option("--today", type=DAY, help="Also judge what depends on the day, as 2026-11-20.")
@click.option("--all", "everything", is_flag=True, help="Show mere information too.")
@click.option(
    "--rule",
    "rules",
    metavar="ID",
    multiple=True,
    help="Show only this rule's problems; repeat it.",
)
@click.option(
    "--only",
    "paths",
    metavar="PATH",
    multiple=True,
    help="Show only problems of files below this path; repeat it.",
)
@click.option(
    "--explain",
    "explained",
    metavar="ID",
    help="Print the page of one rule and stop; “all” lists every rule.",
)
@click.option("--waivers", is_flag=True, help="List all waivers and stop; ended ones first.")
@click.option("--json", "as_json", is_flag=True, help="Print it for a tool.")
@click.option(
    "--grouped/--plain",
    "grouped",
    default=None,
    help="Group by file, or one line a problem; grouped at a terminal by default, plain elsewhere.",
)
def check(
    folder: Path,
    today: date | None,
    everything: bool,
    rules: tuple[str, ...],
    paths: tuple[str, ...],
    explained: str | None,
    waivers: bool,
    as_json: bool,
    grouped: bool | None,
) -> None:
    """Read everything and say what is wrong, each with its place and its mend.

    Ends with 0 when nothing stops the build, with 1 when something does, with 2 when the command
    was not understood.
    """
    if explained:
        say(*(checking.all_rules(_width()) if explained == ALL else [_page(explained).rstrip()]))
        return
    for rule in rules:
        _page(rule)
    gc.disable()
    clinic = pipeline.read_clinic(folder, today=today)
    if waivers:
        _list_waivers(clinic, today, as_json=as_json)
        return
    below = tuple(_below(clinic, path) for path in paths)
    found = pipeline.place_problems(clinic)
    placed = tuple(each for each in found if _wanted(each, rules, below))
    if as_json:
        say(json.dumps(pipeline.report_data(placed), ensure_ascii=False, indent=1))
    else:
        at_terminal = sys.stdout.isatty()
        _print(placed, everything=everything, grouped=at_terminal if grouped is None else grouped)
        _sum_up(placed, sum(each.problem.stops for each in found if each not in placed))
    sys.exit(1 if any(each.problem.stops for each in placed) else 0)


def _print(placed: Sequence[Placed], *, everything: bool, grouped: bool) -> None:
    if not grouped:
        say(*pipeline.report_lines(placed, everything=everything))
        return
    for line in checking.grouped_lines(placed, everything=everything, width=_width()):
        say("".join(_inked(run.ink, run.text) for run in line))
    hidden = "" if everything else checking.hidden_line(placed)
    shown = any(everything or each.problem.level != "info" for each in placed)
    say(*([""] if shown else []), *([hidden] if hidden else []))


def _sum_up(placed: Sequence[Placed], unseen: int) -> None:
    nothing = unseen and not placed
    say("Nothing is wrong there." if nothing else pipeline.summary_line(placed))
    if unseen:
        say(f"Not shown, as you asked: what else stops the build ({unseen}).")


def _list_waivers(clinic: pipeline.Clinic, today: date | None, *, as_json: bool) -> None:
    found = checking.waivers_of(clinic, today)
    if as_json:
        say(json.dumps(checking.waiver_list_data(found), ensure_ascii=False, indent=1))
    else:
        say(*checking.waiver_list_lines(found, today))


def _inked(ink: str, text: str) -> str:
    """Return words with their colour where this terminal has colours and nobody forbids them."""
    coloured = (
        sys.stdout.isatty() and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb"
    )
    return click.style(text, **_INKS[ink]) if coloured and ink in _INKS else text


def _width() -> int:
    return shutil.get_terminal_size().columns


def _page(rule: str) -> str:
    page = pipeline.explain(rule)
    if page is None:
        near = difflib.get_close_matches(rule.casefold().strip("[]"), pipeline.all_ids(), 1)
        more = f"Did you mean “{near[0]}”?" if near else "“--explain all” lists every one."
        raise click.UsageError(f"There is no rule “{rule}”. {more}")
    return page


def _below(clinic: pipeline.Clinic, path: str) -> str:
    below, near = checking.path_below(clinic, path)
    if near:
        more = f" Did you mean “{near}”?" if near != "?" else ""
        raise click.UsageError(f"There is no file of this clinic below “{path}”.{more}")
    return below


def _wanted(placed: Placed, rules: Iterable[str], below: Sequence[str]) -> bool:
    problem = placed.problem
    if rules and problem.rule not in rules:
        return False
    return not below or problem.place.file.startswith(tuple(below))
