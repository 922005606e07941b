"""Before a change: where."""

from __future__ import annotations

import json
import sys
from pathlib import Path

import click

from basinside.cli.typed import folder_option, say
from basinside.pipeline import where as pipeline


@click.command()
@click.argument("written", metavar="ID")
@folder_option
@click.option("--json", "as_json", is_flag=True, help="Print the uses for a tool.")
def where(written: str, folder: Path, as_json: bool) -> None:
    """List each place that uses an id, before you change what it names.

    ID is what you wrote yourself: of a value (boil.hold), a procedure, a step (procedure/step), a
    part (instrument/part), a chemical, a source, a question, a vessel, a rule, or of anything else
    that has an id. An id of several kinds lists each.
    """
    asked = written.strip(" {}[]“”\"'")
    if not asked:
        raise click.UsageError("Name an id, such as boil.hold.")
    answer = pipeline.where_used(folder, asked)
    if as_json:
        say(json.dumps(pipeline.told_to_a_tool(answer), ensure_ascii=False, indent=1))
    else:
        say(*pipeline.told(answer))
    sys.exit(0 if answer.found else 1)
