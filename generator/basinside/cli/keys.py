"""Keys and the trust list: key new; trust init, add, retire, lose, show."""

from __future__ import annotations

import json
import secrets
from datetime import date
from pathlib import Path

import click

from basinside.cli.listed import Listed
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
from basinside.pipeline import keys as pipeline
from basinside.pipeline.forms import draw_phrase


@click.group(cls=Listed)
def key() -> None:
    """Make the key files that sign records and trust lists."""


@key.command("new")
@click.option(
    "--as", "staff_code", type=STAFF_CODE, help="Whose key, as S-01; none for a root key."
)
@click.option("--role", default="supervisor", show_default=True, help="In which role they sign.")
@click.option(
    "--purpose",
    type=click.Choice(["supervisor-key", "root-key"]),
    default="supervisor-key",
    show_default=True,
    help="A supervisor's key signs records; the root key signs the trust list.",
)
@click.option(
    "--clinic",
    type=HERE,
    help="The clinic's folder, so that the file says which handbook it is for.",
)
@phrase_option("--phrase", "", "The key phrase, when it was drawn before.")
@click.option("--new-phrase", is_flag=True, help="Draw the key phrase and show it once.")
@click.option("--into", type=NEW, default=".", help="Where the file goes; here by default.")
@on_option("The day the key is made.")
def new(
    staff_code: str | None,
    role: str,
    purpose: str,
    clinic: Path | None,
    phrase: str | None,
    new_phrase: bool,
    into: Path,
    on: date | None,
) -> None:
    """Make a key and write it sealed under a phrase that is drawn, never chosen."""
    if purpose == "root-key":
        owner = pipeline.Owner(purpose="root-key")
    elif staff_code is None:
        raise click.UsageError("Whose key is it? Name a staff code with --as S-01.")
    else:
        owner = pipeline.Owner(purpose="supervisor-key", staff_code=staff_code, role=role)
    if new_phrase or phrase is None:
        phrase, new_phrase = draw_phrase(secrets.token_bytes), True
    path = into / f"{staff_code or 'root'}.key.json"
    made = pipeline.make_key(
        path,
        owner,
        phrase=phrase,
        made=day_or_today(on),
        random_bytes=secrets.token_bytes,
        clinic=clinic,
    )
    say(f"Written: {path}", f"Key: {made.did}")
    if new_phrase:
        say(
            f"Key phrase: {phrase}",
            "Write it down now: it is not shown again, and nothing else opens the key.",
        )
    if made.demo:
        say("This is a demonstration key: it proves nothing.")


@click.group(cls=Listed)
def trust() -> None:
    """Say whose signatures count: the trust list in content/trust.json."""


root_key_option = click.option(
    "--root-key", type=FILE, required=True, metavar="FILE", help="The root key's file."
)


@trust.command("init")
@root_key_option
@phrase_option("--phrase", "", "The root key's phrase.")
@folder_option
@on_option("The day of signing.")
def init(root_key: Path, phrase: str | None, folder: Path, on: date | None) -> None:
    """Begin a trust list, with nobody on it yet."""
    made = pipeline.begin_trust(
        folder, root_key, phrase_of(phrase, "Root key phrase"), day_or_today(on)
    )
    say(
        f"Written: {folder / 'content' / 'trust.json'}",
        f"Root fingerprint: {pipeline.fingerprint_of(made)}",
        "Give these six words to whoever examines records, by another road than the folder.",
    )


@trust.command()
@root_key_option
@click.option("--key", "key_file", type=FILE, required=True, help="The signer's key file.")
@click.option("--role", help="In which role they sign; the key file's by default.")
@click.option("--from", "from_", type=DAY, help="The day from which it counts; --on by default.")
@phrase_option("--phrase", "", "The root key's phrase.")
@folder_option
@on_option("The day of signing.")
def add(
    root_key: Path,
    key_file: Path,
    role: str | None,
    from_: date | None,
    phrase: str | None,
    folder: Path,
    on: date | None,
) -> None:
    """Put somebody's key on the list."""
    day = day_or_today(on)
    signer = pipeline.signer_of(key_file, from_ or day, role)
    pipeline.list_signer(folder, root_key, phrase_of(phrase, "Root key phrase"), signer, day)
    say(f"{signer.staff_code} may sign as {signer.role} from {signer.from_.isoformat()}.")


@trust.command()
@click.argument("staff_code")
@root_key_option
@phrase_option("--phrase", "", "The root key's phrase.")
@folder_option
@on_option("The last day on which the key signed.")
def retire(
    staff_code: str, root_key: Path, phrase: str | None, folder: Path, on: date | None
) -> None:
    """Retire a key: what it signed until then stays good."""
    day = _end(folder, root_key, phrase, staff_code, on, lost=False)
    say(f"The key of {staff_code} is retired on {day.isoformat()}; earlier records stay good.")


def _end(
    folder: Path,
    root_key: Path,
    phrase: str | None,
    staff_code: str,
    on: date | None,
    *,
    lost: bool,
) -> date:
    day = day_or_today(on)
    phrase = phrase_of(phrase, "Root key phrase")
    pipeline.end_signer(folder, root_key, phrase, staff_code, lost=lost, on=day)
    return day


@trust.command("lose")
@click.argument("staff_code")
@root_key_option
@phrase_option("--phrase", "", "The root key's phrase.")
@folder_option
@on_option("The day on which it was lost.")
def report_lost(
    staff_code: str, root_key: Path, phrase: str | None, folder: Path, on: date | None
) -> None:
    """Report a key lost: none of its records can be relied on any more."""
    day = _end(folder, root_key, phrase, staff_code, on, lost=True)
    say(f"The key of {staff_code} was lost on {day.isoformat()}; its records cannot be relied on.")


@trust.command()
@folder_option
@click.option("--json", "as_json", is_flag=True, help="Print the list for a tool.")
def show(folder: Path, as_json: bool) -> None:
    """Show who is listed, and the six words of the root fingerprint."""
    listed = pipeline.read_trust(folder)
    if as_json:
        say(json.dumps(listed.plain(), ensure_ascii=False, indent=1))
        return
    say(f"Trust list of {listed.handbook}, signed on {listed.issued}.")
    say(f"Root fingerprint: {pipeline.fingerprint_of(listed)}")
    if listed.demo:
        say("A demonstration list: it proves nothing.")
    for each in listed.signers:
        ended = f", lost on {each.lost}" if each.lost else ""
        if each.retired and not each.lost:
            ended = f", retired on {each.retired}"
        say(f"  {each.staff_code}, {each.role}, from {each.from_}{ended}")
