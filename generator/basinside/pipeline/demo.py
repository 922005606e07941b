"""The demonstration clinic and the starter, copied out of the package."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from pathlib import Path

from basinside import files
from basinside.certify.examine import Examination
from basinside.pipeline import desk, examining, signing
from basinside.pipeline.forms import sound_clinic
from basinside.pipeline.keys import fingerprint_of, read_trust
from basinside.pipeline.refusal import RefusedError
from basinside.pipeline.schemas import write_schemas

EVIDENCE = Path("quizzes/sample-evidence")
PHRASES = "DEMO-PHRASES.txt"
MARK = "THIS-IS-A-DEMONSTRATION.txt"
"""A folder with this file was made by us, so it may be made again."""
MARK_TEXT = """\
An invented clinic, to show how the handbook works. Its keys are demonstration keys: they prove
nothing. “basinside demo” writes this folder again.
"""
LEARNER, SCOPE = "M-12", "bag-masks"
SIGNED_ON = date(2026, 11, 20)
"""The day of the demonstration; its evidence is of the weeks before."""
CONFIG = "mkdocs.yml"


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """What the demonstration came to."""

    scored: tuple[desk.Scored, ...]
    signed: signing.Signing
    examined: Examination | None
    fingerprint: str


def lay_out(folder: Path) -> None:
    """Copy the demonstration clinic into a folder that is new, or was made by us before.

    Raises:
        FolderError: when the folder holds something else, or cannot be written.
    """
    source = files.demo_folder()
    marked = files.read_if_there(folder / MARK) is not None
    if folder.exists() and not marked and files.holds_something(folder):
        raise files.FolderError(f"{folder}: is there already and not empty; name a new folder")
    files.write_file(folder / MARK, MARK_TEXT)
    for name, raw in files.read_authored(source).items():
        files.write_file(folder / name, raw)
    files.write_file(folder / CONFIG, files.read_file(source / CONFIG))
    write_schemas(folder / "schemas")


def show(folder: Path) -> Shown:
    """Score the sample attempts, sign one record with the demonstration key, and examine it.

    Raises:
        FolderError: when a file cannot be read or written.
        RefusedError: when the demonstration does not do what it shows.
    """
    phrases = _phrases(folder)
    evidence = files.names_in(folder / EVIDENCE)
    attempts = [each for each in evidence if each.name.endswith(".attempt.json")]
    runs = [each for each in evidence if each.name.endswith(".observation.json")]
    marking = phrases["Marking phrase"]
    scorer = desk.Scorer(folder, marking, sound_clinic(folder))
    scored = tuple(scorer.score(each) for each in attempts)
    own = [each for each in (*attempts, *runs) if each.name.startswith(f"{LEARNER}-")]
    records = folder / "records"
    files.remove_file(records / f"{LEARNER}-{SCOPE}-{SIGNED_ON.isoformat()}.record.json")
    signed = signing.sign(
        folder,
        signing.Asked(scope=SCOPE, learner=LEARNER, on=SIGNED_ON),
        key=signing.open_signer(folder / EVIDENCE / "S-01.key.json", phrases["Key phrase of S-01"]),
        evidence=own,
        marking_phrase=marking,
        into=records,
    )
    words = fingerprint_of(read_trust(folder))
    examined = None
    if signed.path is not None:
        examined = examining.examine_file(
            signed.path,
            folder=folder,
            root_words=phrases["Root fingerprint"],
            on=SIGNED_ON,
            evidence=tuple(own),
        )
    return Shown(scored=scored, signed=signed, examined=examined, fingerprint=words)


def begin_clinic(folder: Path) -> None:
    """Copy the starter into a new folder, with the schemas for the editor.

    Raises:
        FolderError: when the folder holds files already, or cannot be written.
    """
    files.copy_tree(files.package_folder() / "starter", folder)
    write_schemas(folder / "schemas")


def _phrases(folder: Path) -> dict[str, str]:
    raw = files.read_if_there(folder / EVIDENCE / PHRASES)
    if raw is None:
        raise RefusedError(f"{folder / EVIDENCE}: the demonstration's phrases are not there.")
    pairs = (line.split("  ", 1) for line in raw.decode().splitlines() if "  " in line)
    return {name.strip(): words.strip() for name, words in pairs}
