"""Monday's paper: print."""

from __future__ import annotations

from pathlib import Path

import click

from basinside.cli.typed import folder_option
from basinside.pipeline import printing as pipeline

INTO = "paper.html"


@click.command(name="print")
@click.argument("kinds", nargs=-1, metavar="KIND...")
@folder_option
@click.option(
    "--into",
    type=click.Path(path_type=Path, dir_okay=False),
    default=INTO,
    show_default=True,
    help="The file to write.",
)
@click.option("--list", "listed", is_flag=True, help="Show every print there is, and stop.")
def print_command(kinds: tuple[str, ...], folder: Path, into: Path, listed: bool) -> None:
    """Put prints into one file: cards, wall charts, logs, labels, tallies.

    KIND is a kind, such as wall-chart, or one print, such as wall-chart-bag-mask-boil, or all.
    The file needs nothing beside it. Open it in a browser and print it on A4 or Letter, on one
    side, in black.
    """
    if listed:
        for name, words in pipeline.printable_list(folder):
            click.echo(f"{name}\n    {words}")
        return
    if not kinds:
        raise click.UsageError("Say what to print; “basinside print --list” shows what there is.")
    names = pipeline.write_prints(folder, kinds, into)
    sheets = "1 sheet" if len(names) == 1 else f"{len(names)} sheets"
    click.echo(f"Written: {into} ({sheets}). Open it in a browser and print it.")
