"""The author's commands: check, build, preview."""

from __future__ import annotations

import difflib
import gc
import json
import runpy
import subprocess
import sys
from datetime import date
from pathlib import Path

import click

from basinside.pipeline import build as pipeline
from basinside.problem import Placed

HERE = click.Path(exists=True, file_okay=False, path_type=Path)


folder_option = click.option(
    "--folder", type=HERE, default=".", help="The clinic's folder; here by default."
)


@click.command()
@folder_option
@click.option("--today", metavar="DATE", help="Also judge what depends on the day, as 2026-11-20.")
@click.option("--all", "everything", is_flag=True, help="Show hints and mere information too.")
@click.option("--rule", metavar="ID", help="Show only the problems of one rule.")
@click.option("--only", metavar="PATH", help="Show only the problems of files below this path.")
@click.option("--explain", "explained", metavar="ID", help="Print the page of one rule and stop.")
@click.option("--json", "as_json", is_flag=True, help="Print the problems for a tool.")
def check(
    folder: Path,
    today: str | None,
    everything: bool,
    rule: str | None,
    only: str | None,
    explained: str | None,
    as_json: bool,
) -> None:
    """Read everything and say what is wrong, each with its place and its mend."""
    if explained:
        click.echo(_page(explained))
        return
    if rule:
        _page(rule)
    gc.disable()
    clinic = pipeline.read_clinic(folder, today=read_day(today) if today else None)
    found = pipeline.place_problems(clinic)
    placed = tuple(each for each in found if _wanted(each, rule, only))
    if as_json:
        click.echo(json.dumps(pipeline.report_data(placed), ensure_ascii=False, indent=1))
    else:
        for line in pipeline.report_lines(placed, everything=everything):
            click.echo(line)
        unseen = sum(each.problem.stops for each in found if each not in placed)
        nothing = unseen and not placed
        click.echo("Nothing is wrong there." if nothing else pipeline.summary_line(placed))
        if unseen:
            click.echo(f"Not shown, as you asked: what else stops the build ({unseen}).")
    sys.exit(1 if any(each.problem.stops for each in placed) else 0)


def _page(rule: str) -> str:
    page = pipeline.explain(rule)
    if page is None:
        near = difflib.get_close_matches(rule, pipeline.all_ids(), 1)
        more = f" Did you mean “{near[0]}”?" if near else ""
        raise click.UsageError(f"There is no rule “{rule}”.{more}")
    return page


def _wanted(placed: Placed, rule: str | None, only: str | None) -> bool:
    problem = placed.problem
    if rule and problem.rule != rule:
        return False
    below = (only or "").replace("\\", "/").removeprefix("./")
    return problem.place.file.startswith(below)


def read_day(text: str) -> date:
    """Return a day typed as 2026-11-20."""
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise click.UsageError(f"“{text}” is no day; write it as 2026-11-20.") from None


@click.command()
@folder_option
@click.option("--into", type=click.Path(path_type=Path), help="Where the handbook folder goes.")
def build(folder: Path, into: Path | None) -> None:
    """Build the handbook folder; nothing is written when a problem stops the build."""
    if into:
        pipeline.check_site_folder(folder, into)
    sys.exit(run_mkdocs(folder, "build", *(("--site-dir", str(into.resolve())) if into else ())))


@click.command()
@folder_option
@click.option("--port", default=8000, show_default=True, help="The port on this machine.")
def preview(folder: Path, port: int) -> None:
    """Show the handbook in a browser and follow each save; problems stand on top of the page."""
    sys.exit(run_mkdocs(folder, "serve", "--dev-addr", f"127.0.0.1:{port}"))


def run_mkdocs(folder: Path, *arguments: str, silent: bool = False) -> int:
    """Run mkdocs on a clinic's folder and return its exit code.

    It runs in this very process, so that who stops the one stops the other. ``silent`` runs it
    beside and prints what it says only when it fails; its own ``--quiet`` would also hide warnings
    from ``--strict``.
    """
    config = folder / "mkdocs.yml"
    if not config.is_file():
        raise pipeline.FolderError(
            f"{folder}: there is no mkdocs.yml here; make a folder with “basinside new FOLDER”"
        )
    words = [*arguments, "--config-file", str(config)]
    if not silent:
        return _run_here(words)
    command = [sys.executable, "-m", "mkdocs", *words]
    done = subprocess.run(command, check=False, capture_output=True, text=True)  # noqa: S603
    if done.returncode != 0:
        click.echo(done.stdout + done.stderr, err=True)
    return done.returncode


def _run_here(words: list[str]) -> int:
    before, sys.argv = sys.argv, ["mkdocs", *words]
    try:
        runpy.run_module("mkdocs", run_name="__main__", alter_sys=True)
    except SystemExit as ended:
        return ended.code if isinstance(ended.code, int) else int(ended.code is not None)
    finally:
        sys.argv = before
    return 0


AUTHOR_COMMANDS = (check, build, preview)
