"""Answers and observed lines as somebody types them, to attempt and observation files."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any, Final, cast

from basinside import files
from basinside.derive.checklists import line_digests
from basinside.derive.forms import shown_text
from basinside.derive.scopes import procedure_scope_digest
from basinside.model.attempt import Answer, Attempt
from basinside.model.observed import Observation
from basinside.model.words import LINE_VERDICTS, LineVerdict
from basinside.pipeline.build import Clinic, read_clinic
from basinside.pipeline.forms import OpenForm, sound_clinic
from basinside.pipeline.machine_files import as_part
from basinside.pipeline.refusal import RefusedError

NOTHING: Final = "-"
"""Typed for an item that was left open."""
_ANSWER = re.compile(r"([0-9]{1,4})([A-Za-z]{1,26}|-)\Z")
_LINE = re.compile(r"([0-9]{1,3}|all)\s+(met with help|not met|not seen|met)\s*(?::\s*(.+))?\Z")


@dataclass(frozen=True, slots=True, kw_only=True)
class LineToWatch:
    """One line of a checklist with the number it is called by at the prompt."""

    number: int
    line: str
    text: str
    meaning: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Seen:
    """What was seen at one line; ``why`` wherever it was not met."""

    verdict: LineVerdict
    why: str = ""


def read_letters(typed: str, item: Mapping[str, Any]) -> tuple[int, ...]:
    """Return the positions that letters name, rising; none for ``-``.

    Raises:
        RefusedError: naming the letter that the question does not have.
    """
    text = re.sub(r"[\s,]+", "", typed).upper()
    if text == NOTHING:
        return ()
    count = len(item["options"])
    last = chr(ord("A") + count - 1)
    if not text:
        raise RefusedError(f"Type letters from A to {last}, or - when it was left open.")
    for letter in text:
        if not "A" <= letter <= last:
            raise RefusedError(f"“{letter}” is no option here; there are A to {last}.")
    positions = [ord(letter) - ord("A") for letter in text]
    if len(set(positions)) != len(positions):
        raise RefusedError(f"“{text}” names an option twice.")
    return tuple(sorted(positions))


def letters(positions: tuple[int, ...]) -> str:
    """Return positions as paper calls them: A is the first option of the stored order."""
    return "".join(chr(ord("A") + each) for each in positions)


def read_answers(typed: str, form: OpenForm) -> tuple[tuple[int, ...], ...]:
    """Return all answers typed as ``1B 2AC 3-``, in form order.

    Raises:
        RefusedError: naming the piece that cannot be read, or the questions without an answer.
    """
    items = form.document["items"]
    found: dict[int, tuple[int, ...]] = {}
    for piece in typed.split():
        read = _ANSWER.match(piece)
        if read is None:
            raise RefusedError(f"“{piece}” is no answer; write 3B, 3AC, or 3- when left open.")
        number = int(read.group(1))
        if not 1 <= number <= len(items):
            raise RefusedError(f"There is no question {number}; there are 1 to {len(items)}.")
        if number in found:
            raise RefusedError(f"Question {number} is answered twice.")
        try:
            found[number] = read_letters(read.group(2), items[number - 1])
        except RefusedError as error:
            raise RefusedError(f"Question {number}: {error}") from None
    missing = [str(n) for n in range(1, len(items) + 1) if n not in found]
    if missing:
        raise RefusedError(
            f"No answer to {', '.join(missing)}; write {missing[0]}- for a question left open."
        )
    return tuple(found[n] for n in range(1, len(items) + 1))


def language_of(root: Path) -> str:
    """Return the language in which the clinic's forms are printed."""
    handbook = read_clinic(root).content.handbook
    return handbook.language if handbook else "en"


def attempt_of(
    form: OpenForm, answers: tuple[tuple[int, ...], ...], *, learner: str, on: date, language: str
) -> Attempt:
    """Return the attempt of a learner; raises ``RefusedError`` for a code that is no staff code."""
    document = form.document
    plain = {
        "handbook": document["handbook"],
        "edition": document["edition"],
        "kind": "assessment",
        "id": document["assessment"],
        "form": document["form"],
        "form_digest": form.digest,
        "staff_code": learner,
        "date": on.isoformat(),
        "language": language,
        "items": [
            Answer(item=item["item"], chosen=chosen or None).plain()
            for item, chosen in zip(document["items"], answers, strict=True)
        ],
    }
    return as_part({"format": "basinside/attempt/1", **plain}, Attempt, "The attempt")


def save(part: Attempt | Observation, into: Path) -> Path:
    """Write an attempt or observation under its own name; an earlier file is never overwritten.

    Raises:
        FolderError: when it is there already or cannot be written.
    """
    if isinstance(part, Attempt):
        name = f"{part.staff_code}-{part.id}-{part.form}-{part.date}.attempt.json"
    else:
        start = part.start.replace(":", "")
        name = f"{part.learner_staff_code}-{part.procedure}-{part.date}-{start}.observation.json"
    files.write_new_file(into / name, part.text())
    return into / name


def checklist(root: Path, procedure: str) -> tuple[Clinic, tuple[LineToWatch, ...]]:
    """Return the clinic and the lines to watch of a procedure, as it stands now.

    Raises:
        RefusedError: when there is no such procedure, or the handbook has problems.
    """
    clinic = sound_clinic(root)
    whole = clinic.derived.procedures.get(procedure)
    if whole is None:
        known = ", ".join(clinic.content.procedures)
        raise RefusedError(f"There is no procedure “{procedure}”; there is {known}.")
    digests = line_digests(clinic.content, whole)
    lines = clinic.derived.checklists[procedure].lines
    return clinic, tuple(
        LineToWatch(
            number=number,
            line=line.line,
            text=shown_text(line.text, clinic.content),
            meaning=digests[line.line],
        )
        for number, line in enumerate(lines, 1)
    )


def read_verdict(typed: str) -> LineVerdict:
    """Return a verdict from its word or its beginning; raises ``RefusedError`` with the words."""
    text = " ".join(typed.casefold().split())
    for verdict in LINE_VERDICTS:
        if text == verdict:
            return verdict
    raise RefusedError(f"“{typed}” is no verdict; write one of: {', '.join(LINE_VERDICTS)}.")


def read_lines(typed: str, lines: tuple[LineToWatch, ...]) -> dict[int, Seen]:
    """Return what was seen, typed as ``1 met, 2 not met: why``; ``all met`` begins with all.

    Raises:
        RefusedError: naming the piece that cannot be read, a line without a verdict, or a line
            that was not met without saying why.
    """
    found: dict[int, Seen] = {}
    for piece in re.split(r",\s*(?=(?:[0-9]{1,3}|all)\s+(?:met|not))", typed.strip()):
        read = _LINE.match(piece.strip())
        if read is None:
            raise RefusedError(f"“{piece}” cannot be read; write “2 not met: why”.")
        seen = Seen(verdict=cast("LineVerdict", read.group(2)), why=(read.group(3) or "").strip())
        if read.group(1) == "all":
            found |= {each.number: seen for each in lines}
        else:
            found[int(read.group(1))] = seen
    strange = sorted(set(found) - {each.number for each in lines})
    if strange:
        raise RefusedError(f"There is no line {strange[0]}; there are 1 to {len(lines)}.")
    missing = [str(each.number) for each in lines if each.number not in found]
    if missing:
        raise RefusedError(f"No verdict on {', '.join(missing)}; write “{missing[0]} not seen”.")
    for number, seen in found.items():
        if seen.verdict != "met" and not seen.why:
            raise RefusedError(f"Line {number} was {seen.verdict}: say why, after a colon.")
    return found


def observation_of(
    clinic: Clinic,
    procedure: str,
    lines: tuple[LineToWatch, ...],
    seen: Mapping[int, Seen],
    about: Mapping[str, object],
) -> Observation:
    """Return the observation of one run, bound to what the checklist means now.

    Args:
        clinic: the clinic as it stands.
        procedure: the procedure's id.
        lines: its checklist.
        seen: what was seen, by line number.
        about: learner_staff_code, observer_staff_code, date, start, end, setting, announced,
            help, comments, as the file has them; absent ones left out.

    Raises:
        RefusedError: when a member is not what it must be.
    """
    handbook = clinic.content.handbook
    entry = clinic.content.procedures[procedure]
    plain: dict[str, object] = {
        "format": "basinside/observation/1",
        "handbook": handbook.handbook if handbook else "",
        "edition": handbook.edition if handbook else "",
        "procedure": procedure,
        "scope_digest": procedure_scope_digest(clinic.content, procedure),
        **({"instrument": entry.instrument} if entry.instrument else {}),
        **({"route": entry.route} if entry.route else {}),
        **about,
        "lines": [
            {
                "line": each.line,
                "meaning": each.meaning,
                "verdict": seen[each.number].verdict,
                **({"why": seen[each.number].why} if seen[each.number].why else {}),
            }
            for each in lines
        ],
    }
    return as_part(plain, Observation, "The observation")
