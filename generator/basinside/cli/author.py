"""The author's commands: build and preview, and check beside them."""

from __future__ import annotations

import runpy
import subprocess
import sys
from pathlib import Path

import click

from basinside.cli.check import check
from basinside.cli.typed import folder_option
from basinside.pipeline import build as pipeline


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
