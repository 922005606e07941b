"""Editions and types: edition close, changes, schemas."""

from __future__ import annotations

import json
from pathlib import Path

import click

from basinside.cli.listed import Listed
from basinside.cli.typed import NEW, folder_option, say
from basinside.pipeline import editions as pipeline
from basinside.pipeline.schemas import schemas as all_schemas
from basinside.pipeline.schemas import write_schemas


@click.group(cls=Listed)
def edition() -> None:
    """Close an edition, so that later ones can be compared with it."""


@edition.command()
@folder_option
def close(folder: Path) -> None:
    """Write what every step of the current edition means to content/editions.

    From then on the edition's content may not change; a change needs a new edition id.
    """
    path, now = pipeline.close_edition(folder)
    say(f"Written: {path}" if now else f"{path}: closed before, and nothing changed since.")


@click.command()
@click.argument("old")
@click.argument("new", required=False)
@folder_option
@click.option("--json", "as_json", is_flag=True, help="Print the changes for a tool.")
def changes(old: str, new: str | None, folder: Path, as_json: bool) -> None:
    """Say in plain words what changed from OLD to NEW, and who has to refresh what.

    OLD and NEW are each an edition id, an edition file, a clinic's folder or a git revision;
    without NEW it is the clinic's folder as it is now. A closed edition keeps no questions and
    no walls: name folders or revisions to have these compared too.
    """
    found = pipeline.compare_sides(folder, old, new or str(folder))
    if as_json:
        say(json.dumps(pipeline.told_to_a_tool(found), ensure_ascii=False, indent=1))
    else:
        say(*pipeline.told(found))


@click.command()
@click.option("--into", type=NEW, help="Write them into this folder instead of printing them.")
def schemas(into: Path | None) -> None:
    """Print the JSON Schema of every kind of file, for editors and other programs."""
    if into is None:
        say(json.dumps(all_schemas(), ensure_ascii=False, indent=1))
        return
    say(f"Written: {write_schemas(into)} schemas into {into}")
