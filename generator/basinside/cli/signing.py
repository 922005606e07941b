"""Records: sign, examine."""

from __future__ import annotations

import json
import sys
from datetime import date
from pathlib import Path

import click

from basinside.cli.typed import (
    DAY,
    FILE,
    HERE,
    NEW,
    STAFF_CODE,
    day_or_today,
    folder_option,
    on_option,
    phrase_of,
    phrase_option,
    say,
)
from basinside.model.finding import Verdict
from basinside.pipeline import desk, examining, signing


@click.command()
@click.option("--scope", required=True, metavar="ID", help="What for: a scope or a procedure.")
@click.option("--learner", required=True, type=STAFF_CODE, help="Whom for, as M-12.")
@click.option("--key", "key_file", type=FILE, required=True, help="Your key file.")
@click.option("--evidence", type=FILE, multiple=True, help="An attempt or observation; repeat it.")
@click.argument("more_evidence", nargs=-1, type=FILE)
@on_option("The day of signing.")
@click.option("--alone", is_flag=True, help="May do it alone; so by default.")
@click.option("--beside", type=STAFF_CODE, help="May work beside this person only, on --steps.")
@click.option("--steps", help="The steps for --beside, as PROCEDURE/STEP with commas between.")
@click.option("--limits", multiple=True, metavar="SENTENCE", help="A limit; repeat for more.")
@click.option("--until", type=DAY, help="End it sooner than the policy does.")
@click.option(
    "--override", metavar="REASON", default="", help="Sign in spite of the policy; shown."
)
@phrase_option("--phrase", "BASINSIDE_KEY_PHRASE", "Your key phrase.")
@click.option(
    "--marking-phrase",
    envvar="BASINSIDE_MARKING_PHRASE",
    metavar="WORDS",
    help="Scores the attempts. Asked for when it is not given; or set BASINSIDE_MARKING_PHRASE.",
)
@folder_option
@click.option("--into", type=NEW, default=".", help="Where the record goes; here by default.")
@click.option("--json", "as_json", is_flag=True, help="Print what became of it for a tool.")
def sign(  # noqa: PLR0913, PLR0917 - an option each
    scope: str,
    learner: str,
    key_file: Path,
    evidence: tuple[Path, ...],
    more_evidence: tuple[Path, ...],
    on: date | None,
    alone: bool,
    beside: str | None,
    steps: str | None,
    limits: tuple[str, ...],
    until: date | None,
    override: str,
    phrase: str | None,
    marking_phrase: str | None,
    folder: Path,
    into: Path,
    as_json: bool,
) -> None:
    """Sign a completion record, if the policy in the handbook is met by the evidence.

    Each line of the policy is printed with its verdict. Evidence files may also stand at the end
    of the command, without --evidence. Leaves with 1 when nothing was signed.
    """
    if alone and beside:
        raise click.UsageError("Alone or beside somebody: name one.")
    given = (*evidence, *more_evidence)
    if desk.has_attempt(given):
        marking_phrase = phrase_of(marking_phrase, "Marking phrase")
    done = signing.sign(
        folder,
        signing.Asked(
            scope=scope,
            learner=learner,
            on=day_or_today(on),
            beside=beside,
            steps=tuple(each.strip() for each in (steps or "").split(",") if each.strip()),
            limits=limits,
            override=override.strip(),
            until=until,
        ),
        key=signing.open_signer(key_file, phrase_of(phrase, "Key phrase")),
        evidence=given,
        marking_phrase=marking_phrase,
        into=into,
    )
    if as_json:
        say(json.dumps(signing.told_to_a_tool(done), ensure_ascii=False, indent=1))
    else:
        say(*signing.told(done), "")
        say(f"Signed: {done.path}" if done.path else "Nothing was signed.")
    sys.exit(0 if done.path else 1)


@click.command()
@click.argument("record", type=FILE)
@click.argument("folder", type=HERE, required=False)
@click.option("--root", metavar="WORDS", help="The root fingerprint, as you got it another way.")
@on_option("The day to judge.")
@click.option("--signature-only", is_flag=True, help="The arithmetic alone, for any credential.")
@click.option("--evidence", type=FILE, multiple=True, help="A file said to be its evidence.")
@click.option("--json", "as_json", is_flag=True, help="Print the findings for a tool.")
def examine(
    record: Path,
    folder: Path | None,
    root: str | None,
    on: date | None,
    signature_only: bool,
    evidence: tuple[Path, ...],
    as_json: bool,
) -> None:
    """Say of a RECORD what holds, what fails, who signed, and what cannot be known.

    FOLDER is the handbook folder, for its trust list. Whoever brought the folder may have made
    it: only --root, the six words that came another way, tells. Leaves with 1 when the record
    cannot be relied on or nobody here says who signed it.
    """
    if signature_only:
        finding = examining.signature_of(record)
        say(examining.told_finding(finding))
        sys.exit(0 if finding.verdict is Verdict.HOLDS else 1)
    found = examining.examine_file(
        record, folder=folder, root_words=root, on=day_or_today(on), evidence=evidence
    )
    if as_json:
        say(json.dumps(examining.told_to_a_tool(found), ensure_ascii=False, indent=1))
    else:
        say(*examining.told(found))
    sys.exit(0 if found.standing in examining.GOOD else 1)
