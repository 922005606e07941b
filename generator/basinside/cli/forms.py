"""Forms of an assessment: seal, form."""

from __future__ import annotations

import secrets
from pathlib import Path

import click

from basinside.cli.typed import NEW, folder_option, phrase_of, phrase_option, say
from basinside.pipeline import forms as pipeline
from basinside.pipeline.form_report import form_report_lines


@click.command()
@click.argument("assessment")
@click.option("--form", default="A", show_default=True, help="The form's letter.")
@folder_option
@phrase_option("--phrase", "BASINSIDE_MARKING_PHRASE", "The marking phrase of all forms.")
@click.option("--new-phrase", is_flag=True, help="Draw a new marking phrase and show it once.")
def seal(assessment: str, form: str, folder: Path, phrase: str | None, new_phrase: bool) -> None:
    """Draw a form of an assessment and seal it; its codes are shown once.

    Before them stands whether the blueprint is met and what the form's length means. The sealed
    form goes to quizzes/sealed and is never overwritten. Write the codes down, or
    print them: nothing else opens the form.
    """
    if new_phrase:
        phrase = pipeline.draw_phrase(secrets.token_bytes)
    sealing = pipeline.seal_assessment(
        folder,
        assessment,
        form,
        phrase=phrase_of(phrase, "Marking phrase"),
        random_bytes=secrets.token_bytes,
    )
    say(
        f"Sealed: {sealing.path}",
        "",
        *form_report_lines(sealing.report),
        "",
        f"Opening code   {sealing.codes.opening_code}",
        "    opens this form for learners, on the day of the assessment.",
        f"Marking code   {sealing.codes.marking_code}",
        "    opens this form's key; once it was typed anywhere, nobody may sit this form again.",
        f"Marking phrase {sealing.phrase}" if new_phrase else "Marking phrase as you gave it",
        "    opens every form and every key; for the desk and this program alone.",
        "",
        "Write them down now: they are not shown again. Keep them away from the folder.",
    )


@click.command()
@click.argument("assessment")
@click.option("--form", default="A", show_default=True, help="The form's letter.")
@folder_option
@phrase_option("--phrase", "BASINSIDE_MARKING_PHRASE", "The marking phrase.")
@click.option("--into", type=NEW, help="The folder for the prints; never one that is handed out.")
def form(assessment: str, form: str, folder: Path, phrase: str | None, into: Path | None) -> None:
    """Print a sealed form: the questions with their answer strip, and the key apart.

    Two files to open in a browser and print on A4. They are not part of the handbook.
    """
    written = pipeline.print_form(
        folder, assessment, form, phrase=phrase_of(phrase, "Marking phrase"), into=into
    )
    say(*(f"Written: {each}" for each in written), "The key is for the marker only.")
