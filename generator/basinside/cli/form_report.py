"""For authors: what a form and its cut mean, before anybody sits it."""

from __future__ import annotations

import json
import sys
from dataclasses import asdict
from pathlib import Path

import click

from basinside.cli.typed import folder_option, phrase_of, phrase_option, say
from basinside.pipeline import form_report as pipeline
from basinside.pipeline.forms import sealed_form_report

_JSON = click.option("--json", "as_json", is_flag=True, help="Print it for a tool.")


@click.command("form-report")
@click.argument("assessment")
@click.option("--form", help="The letter of a sealed form; without it, what the pool can fill.")
@folder_option
@phrase_option("--phrase", "BASINSIDE_MARKING_PHRASE", "With --form, the marking phrase.")
@_JSON
def form_report(
    assessment: str, form: str | None, folder: Path, phrase: str | None, as_json: bool
) -> None:
    """Say whether a form meets its blueprint, and who would pass it by its length and its cut.

    Read it where no learner sees your screen. Ends with 1 when the blueprint is not met.
    """
    if form:
        typed = phrase_of(phrase, "Marking phrase")
        report = sealed_form_report(folder, assessment, form, phrase=typed)
    else:
        report = pipeline.read_pool_report(folder, assessment)
    if as_json:
        say(json.dumps({**asdict(report), "met": report.met}, ensure_ascii=False, indent=1))
    else:
        say(*pipeline.form_report_lines(report))
    sys.exit(0 if report.met else 1)


@click.command()
@click.argument("assessment")
@folder_option
@click.option("--blank", is_flag=True, help="Print a sheet to fill in, with every question.")
@_JSON
def standard(assessment: str, folder: Path, blank: bool, as_json: bool) -> None:
    """Work out the cut that judges set, with how sure it is, from their sheet of ratings.

    The sheet is quizzes/standards/ASSESSMENT.yaml: each judge, by role, says of each question how
    many of 100 people who are just able enough would have it right.
    """
    if blank:
        say(*pipeline.blank_sheet(folder, assessment))
        return
    report = pipeline.read_cut_report(folder, assessment)
    if as_json:
        say(json.dumps(asdict(report), ensure_ascii=False, indent=1))
    else:
        say(*pipeline.cut_lines(report))
