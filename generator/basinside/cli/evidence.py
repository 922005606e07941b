"""Attempts and observations: enter-attempt, enter-observation, score."""

from __future__ import annotations

import json
import sys
from collections.abc import Callable
from datetime import date
from functools import partial
from pathlib import Path
from typing import TypeVar

import click

from basinside.cli.typed import (
    CLOCK,
    DAY,
    FILE,
    NEW,
    STAFF_CODE,
    folder_option,
    phrase_of,
    phrase_option,
    say,
)
from basinside.model.words import LINE_VERDICTS, SETTINGS
from basinside.pipeline import desk, entering
from basinside.pipeline.forms import OpenForm, opened_form
from basinside.pipeline.refusal import RefusedError

T = TypeVar("T")
NOTHING_LOST = "Nothing was lost; type it again."


@click.command("enter-attempt")
@click.argument("assessment")
@click.option("--form", default="A", show_default=True, help="The form's letter.")
@click.option("--learner", required=True, type=STAFF_CODE, help="Whose answers, as M-12.")
@click.option("--date", "day", type=DAY, required=True, help="The day they were given.")
@click.option("--answers", help="All answers in one line, as “1B 2AC 3-”; asked for if not given.")
@click.option("--code", metavar="CODE", help="The form's opening code.")
@phrase_option("--phrase", "BASINSIDE_MARKING_PHRASE", "The marking phrase, instead of the code.")
@folder_option
@click.option("--into", type=NEW, default=".", help="Where the attempt file goes; here by default.")
def enter_attempt(
    assessment: str,
    form: str,
    learner: str,
    day: date,
    answers: str | None,
    code: str | None,
    phrase: str | None,
    folder: Path,
    into: Path,
) -> None:
    """Type in the answer strip of a paper form; writes an attempt file, never a score."""
    opened = opened_form(
        folder,
        assessment,
        form,
        code=code,
        phrase=None if code else phrase_of(phrase, "Opening the form: marking phrase"),
    )
    given = entering.read_answers(answers, opened) if answers else _ask_answers(opened)
    language = entering.language_of(folder)
    attempt = entering.attempt_of(opened, given, learner=learner, on=day, language=language)
    say(f"Understood for {learner} on {day.isoformat()}:")
    for number, (item, chosen) in enumerate(zip(opened.document["items"], given, strict=True), 1):
        say(f"  {number:>2} {entering.letters(chosen) or '-':<4} {item['stem']}")
        if item["kind"] == "choice" and len(chosen) > 1:
            say("     more than one answer to a question that asks for one")
    say(f"Written: {entering.save(attempt, into)}")


def _ask_answers(form: OpenForm) -> tuple[tuple[int, ...], ...]:
    say("Letters as on the paper; - for a question left open.")
    out = []
    for number, item in enumerate(form.document["items"], 1):
        say(f"{number} {item['stem']}")
        for position, option in enumerate(item["options"]):
            say(f"    {entering.letters((position,))} {option}")
        out.append(_until_read(f"  {number}", partial(entering.read_letters, item=item)))
    return tuple(out)


def _until_read(ask: str, read: Callable[[str], T]) -> T:
    """Ask until what was typed can be read; earlier answers stay."""
    while True:
        try:
            return read(str(click.prompt(ask, default="", show_default=False)))
        except RefusedError as error:
            say(f"    {error} {NOTHING_LOST}")


@click.command("enter-observation")
@click.argument("procedure")
@click.option("--learner", required=True, type=STAFF_CODE, help="Who was watched, as M-12.")
@click.option("--observer", required=True, type=STAFF_CODE, help="Who watched, as S-02.")
@click.option("--date", "day", type=DAY, required=True, help="The day of the run.")
@click.option("--start", required=True, type=CLOCK, help="When it began.")
@click.option("--end", type=CLOCK, help="When it was over.")
@click.option("--setting", type=click.Choice(SETTINGS), required=True, help="Where it was done.")
@click.option("--announced/--spot-check", default=True, help="Whether it was announced.")
@click.option("--help-needed/--no-help", default=None, help="Whether the observer had to help.")
@click.option("--lines", help="All lines at once, as “all met, 2 not met: why”.")
@click.option("--comments", help="What else is worth writing down.")
@folder_option
@click.option("--into", type=NEW, default=".", help="Where the file goes; here by default.")
def enter_observation(  # noqa: PLR0913, PLR0917 - an option each
    procedure: str,
    learner: str,
    observer: str,
    day: date,
    start: str,
    end: str | None,
    setting: str,
    announced: bool,
    help_needed: bool | None,
    lines: str | None,
    comments: str | None,
    folder: Path,
    into: Path,
) -> None:
    """Type in an observation sheet; bound to what the checklist says now."""
    if learner == observer:
        raise RefusedError("Nobody observes themselves: --learner and --observer are the same.")
    clinic, watched = entering.checklist(folder, procedure)
    seen = entering.read_lines(lines, watched) if lines else _ask_lines(watched)
    if help_needed is None:
        help_needed = click.confirm("Did the observer have to help?", default=None)
    about: dict[str, object] = {
        "learner_staff_code": learner,
        "observer_staff_code": observer,
        "date": day.isoformat(),
        "start": start,
        **({"end": end} if end else {}),
        "setting": setting,
        "announced": announced,
        "help": help_needed,
        **({"comments": comments} if comments else {}),
    }
    made = entering.observation_of(clinic, procedure, watched, seen, about)
    say(f"Understood for {learner}, watched by {observer} on {day.isoformat()}, {setting}:")
    for each in watched:
        verdict = seen[each.number]
        say(f"  {each.number:>2} {verdict.verdict:<13} {each.text}")
        if verdict.why:
            say(f"     {verdict.why}")
    say("  The observer had to help." if help_needed else "  Without help.")
    say(f"Written: {entering.save(made, into)}")


def _ask_lines(lines: tuple[entering.LineToWatch, ...]) -> dict[int, entering.Seen]:
    say(f"For each line one of: {', '.join(LINE_VERDICTS)}.")
    out = {}
    for each in lines:
        say(f"{each.number} {each.text}")
        verdict = _until_read(f"  {each.number}", entering.read_verdict)
        why = "" if verdict == "met" else str(click.prompt("  why"))
        out[each.number] = entering.Seen(verdict=verdict, why=why)
    return out


@click.command()
@click.argument("attempts", nargs=-1, required=True, type=FILE)
@phrase_option("--phrase", "BASINSIDE_MARKING_PHRASE", "The marking phrase.")
@folder_option
@click.option("--json", "as_json", is_flag=True, help="Print the results for a tool.")
def score(attempts: tuple[Path, ...], phrase: str | None, folder: Path, as_json: bool) -> None:
    """Score attempts, and say whether observed runs count, from the answers alone.

    ATTEMPTS are attempt or observation files. Critical and unsafe answers are named. Leaves with
    1 when one of them is not passed or does not count.
    """
    if desk.has_attempt(attempts):
        phrase = phrase_of(phrase, "Marking phrase")
    scorer = desk.Scorer(folder, phrase)
    scored = [scorer.score(each) for each in attempts]
    if as_json:
        say(json.dumps(desk.told_to_a_tool(scored), ensure_ascii=False, indent=1))
    else:
        for each in scored:
            say(*desk.told(each))
        say(desk.told_together(scored))
    sys.exit(0 if all(desk.is_good(each) for each in scored) else 1)
