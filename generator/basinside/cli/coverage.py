"""For authors: what the assessments cover."""

from __future__ import annotations

import json
import sys
from pathlib import Path

import click

from basinside.cli.typed import folder_option, say
from basinside.pipeline import coverage as pipeline


@click.command()
@folder_option
@click.option("--steps", is_flag=True, help="Name the questions beside each safety step.")
@click.option("--json", "as_json", is_flag=True, help="Print it for a tool.")
def coverage(folder: Path, steps: bool, as_json: bool) -> None:
    """Say what each assessment covers, and which safety steps it never asks about.

    Read it where no learner sees your screen. What the self-tests ask about and what is watched
    stands in the handbook itself, on the page “Coverage map”.
    """
    covered, whole = pipeline.read_coverage(folder)
    if as_json:
        say(json.dumps(pipeline.coverage_data(covered), ensure_ascii=False, indent=1))
    else:
        say(*pipeline.coverage_lines(covered, steps=steps))
    if not whole:
        click.echo("Not everything could be read; “basinside check” says what.", err=True)
        sys.exit(1)
