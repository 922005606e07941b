"""To begin with: demo and new."""

from __future__ import annotations

import sys
from pathlib import Path
from shutil import which

import click

from basinside.cli.author import run_mkdocs
from basinside.cli.typed import NEW, say
from basinside.pipeline import demo as pipeline
from basinside.pipeline import desk, examining, signing
from basinside.pipeline.build import check_site_folder
from basinside.pipeline.refusal import RefusedError


@click.command()
@click.argument("folder", type=NEW, default="basinside-demo")
@click.option("--site", type=NEW, help="Where the built handbook goes; FOLDER/site by default.")
def demo(folder: Path, site: Path | None) -> None:
    """Show the whole path with an invented clinic: build, score, sign, examine.

    Writes to FOLDER, basinside-demo by default, and says where everything is.
    """
    site = site or folder / "site"
    check_site_folder(folder, site)
    pipeline.lay_out(folder)
    say(f"1. The clinic's own files: {folder / 'content'} and {folder / 'quizzes'}", "")
    built = run_mkdocs(folder, "build", "--strict", "--site-dir", str(site.resolve()), silent=True)
    if built != 0:
        sys.exit(built)
    say(f"2. The handbook, built from them: {site / 'index.html'}", "")
    shown = pipeline.show(folder)
    say(f"3. The sample attempts in {folder / pipeline.EVIDENCE}, scored from the answers alone:")
    for each in shown.scored:
        say(*(f"   {line}" for line in desk.told(each)))
    if shown.signed.path is None or shown.examined is None:
        say(*signing.told(shown.signed))
        raise RefusedError("The demonstration record was not signed.")
    say(
        "",
        f"4. The policy of content/handbook.yaml is met, so this record was signed on"
        f" {pipeline.SIGNED_ON.isoformat()}:",
        f"   {shown.signed.path}",
        "",
        "5. What anybody can say of it, with the handbook's folder and the six words"
        f" “{shown.fingerprint}”:",
        *(f"   {line}" for line in examining.told(shown.examined)),
        "",
        "Open the handbook in a browser:",
        f"   {(site / 'index.html').resolve()}",
        "Change something in content, then:",
        f"   {_program()} check --folder {_quoted(folder)}",
        f"   {_program()} build --folder {_quoted(folder)}",
        "Begin your own:",
        f"   {_program()} new my-clinic",
    )


def _program() -> str:
    """Return what to type for this program: its name, or its path where no name finds it."""
    started = Path(sys.argv[0])
    if which("basinside") or started.stem != "basinside":
        return "basinside"
    here = Path.cwd()
    return str(started.relative_to(here) if started.is_relative_to(here) else started)


def _quoted(path: Path) -> str:
    """Return a path as one types it, in quotes where it holds a space."""
    return f'"{path}"' if " " in str(path) else str(path)


@click.command()
@click.argument("folder", type=NEW)
def new(folder: Path) -> None:
    """Begin a clinic of your own in FOLDER: a few small files with remarks."""
    pipeline.begin_clinic(folder)
    say(
        f"Written: {folder}",
        "Begin with content/handbook.yaml; each file says what it is for. Then:",
        f"   {_program()} check --folder {_quoted(folder)}",
        f"   {_program()} preview --folder {_quoted(folder)}",
        f"   {_program()} build --folder {_quoted(folder)}",
    )
