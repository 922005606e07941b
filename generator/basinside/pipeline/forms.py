"""Assessment forms: drawn, sealed, opened again and printed."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from basinside import files
from basinside.derive.forms import UnfillableError, drawn_digest, form_documents
from basinside.load.content import load
from basinside.model.form_report import FormReport
from basinside.model.sealed import SealedForm
from basinside.pipeline.build import Clinic, read_clinic
from basinside.pipeline.form_report import assessment_of, report_of_form
from basinside.pipeline.machine_files import read_part
from basinside.pipeline.refusal import RefusedError
from basinside.render.environment import Theme
from basinside.render.views.paper import (
    STYLESHEET,
    answer_key_view,
    paper_chrome,
    question_form_view,
)
from basinside.seal.codes import CodeError, new_phrase
from basinside.seal.envelope import SealError
from basinside.seal.forms import FormCodes, FormName, form_digest, open_form, open_keys, seal_form

FIRST_FORM = ord("A")
NOT_INTO = ("site", "content", "quizzes")
"""Folders below a clinic's that never take a print: built, authored, or handed out."""

RandomBytes = Callable[[int], bytes]


@dataclass(frozen=True, slots=True, kw_only=True)
class Sealing:
    """A sealed form: where it lies, what opens it, shown once, and what it is worth."""

    path: Path
    codes: FormCodes
    phrase: str
    report: FormReport


@dataclass(frozen=True, slots=True, kw_only=True)
class OpenForm:
    """An opened form and the digest of the envelope it came from."""

    document: dict[str, Any]
    digest: str


def sound_clinic(root: Path) -> Clinic:
    """Return a clinic without problems that stop a build.

    Raises:
        FolderError: when the folder cannot be read.
        RefusedError: when the content has problems; certifying on it would certify them.
    """
    clinic = read_clinic(root)
    if clinic.stops or clinic.content.handbook is None:
        raise RefusedError(
            f"{root}: the handbook has problems; mend what “basinside check” names first."
        )
    return clinic


def draw_phrase(random_bytes: RandomBytes) -> str:
    """Return a fresh phrase of six words."""
    return new_phrase(random_bytes)


def seal_assessment(
    root: Path, assessment: str, form: str, *, phrase: str, random_bytes: RandomBytes
) -> Sealing:
    """Draw a form of an assessment and seal it into ``quizzes/sealed``.

    Args:
        root: the clinic's folder.
        assessment: its id.
        form: the form's letter.
        phrase: the marking phrase of all forms, as typed.
        random_bytes: where randomness comes from; 16 octets are the form's own draw.

    Raises:
        FolderError: when the sealed form is there already, or cannot be written.
        RefusedError: when the pool cannot fill the form, or the phrase is none.
    """
    clinic = sound_clinic(root)
    entry = assessment_of(clinic.content, assessment)
    letters = [chr(FIRST_FORM + n) for n in range(entry.forms)]
    if form not in letters:
        raise RefusedError(f"{assessment} has no form {form}; its forms are {', '.join(letters)}.")
    path = sealed_path(root, assessment, form)
    if files.read_if_there(path) is not None:
        raise files.FolderError(f"{path}: is there already; nothing was overwritten")
    try:
        drawn, keys = form_documents(clinic.content, entry, form, random_bytes(16))
        sealed, codes = seal_form(
            drawn,
            keys,
            name=FormName(
                handbook=drawn["handbook"],
                assessment=assessment,
                version=entry.version,
                form=form,
                demo=is_demonstration(clinic),
            ),
            marking_phrase=phrase,
            random_bytes=random_bytes,
        )
    except (UnfillableError, CodeError) as error:
        raise RefusedError(str(error)) from None
    files.write_new_file(path, sealed.text())
    report = report_of_form(clinic.content, entry, drawn)
    return Sealing(path=path, codes=codes, phrase=phrase, report=report)


def is_demonstration(clinic: Clinic) -> bool:
    """Return whether a clinic is invented: its keys and forms are then marked so."""
    handbook = clinic.content.handbook
    return handbook is not None and handbook.demonstration is not None


def sealed_path(root: Path, assessment: str, form: str) -> Path:
    """Return where a sealed form lies."""
    return root / "quizzes" / "sealed" / f"{assessment}-{form}.json"


def read_sealed(root: Path, assessment: str, form: str) -> SealedForm:
    """Return a sealed form.

    Raises:
        RefusedError: when there is none, or the file is none.
    """
    path = sealed_path(root, assessment, form)
    if files.read_if_there(path) is None:
        raise RefusedError(
            f"There is no sealed form {form} of {assessment} in {path.parent};"
            f" “basinside seal {assessment} --form {form}” makes one."
        )
    return read_part(path, SealedForm)


def opened_form(
    root: Path, assessment: str, form: str, *, code: str | None = None, phrase: str | None = None
) -> OpenForm:
    """Return a form, opened by its opening code or by the marking phrase, as typed.

    Raises:
        RefusedError: when it does not open.
    """
    sealed = read_sealed(root, assessment, form)
    try:
        document = open_form(sealed, opening_code=code, phrase=phrase)
    except (CodeError, SealError) as error:
        raise RefusedError(str(error)) from None
    return OpenForm(document=document, digest=form_digest(sealed))


def opened_keys(root: Path, assessment: str, form: str, phrase: str) -> dict[str, Any]:
    """Return the keys of a form, opened by the marking phrase.

    Raises:
        RefusedError: when they do not open, or are not of the form beside them.
    """
    sealed = read_sealed(root, assessment, form)
    try:
        keys = open_keys(sealed, phrase=phrase)
        drawn = open_form(sealed, phrase=phrase)
    except (CodeError, SealError) as error:
        raise RefusedError(str(error)) from None
    if keys.get("form_drawn") != drawn_digest(drawn):
        raise RefusedError(
            f"{assessment}, form {form}: the keys are of another drawing of this form; the sealed"
            " file was put together from two."
        )
    return keys


def sealed_form_report(root: Path, assessment: str, form: str, *, phrase: str) -> FormReport:
    """Return the report of a sealed form, opened by the marking phrase, for its author.

    Raises:
        FolderError: when the folder cannot be read.
        RefusedError: when there is no such assessment or form, or it does not open.
    """
    content, _ = load(files.read_authored(root))
    entry = assessment_of(content, assessment)
    opened = opened_form(root, assessment, form, phrase=phrase)
    return report_of_form(content, entry, opened.document)


def print_form(
    root: Path, assessment: str, form: str, *, phrase: str, into: Path | None = None
) -> tuple[Path, ...]:
    """Write the questions with their answer strip, and the key, as files to print.

    Args:
        root: the clinic's folder.
        assessment: the assessment's id.
        form: the form's letter.
        phrase: the marking phrase, as typed.
        into: the folder to write to; beside the clinic's content by default.

    Raises:
        FolderError: when a file cannot be written.
        RefusedError: when the form does not open, or the folder is one that is handed out.
    """
    opened = opened_form(root, assessment, form, phrase=phrase)
    keys = opened_keys(root, assessment, form, phrase)
    folder = into or root / f"forms-{assessment}-{form}"
    _refuse_built(root, folder)
    theme = Theme(files.read_theme())
    handbook = read_clinic(root).content.handbook
    if handbook is None:
        raise RefusedError(f"{root}: there is no handbook here to print for.")
    language = handbook.language
    questions = question_form_view(opened.document, handbook)
    key = answer_key_view(opened.document, keys, handbook)
    pages = {
        f"question-form-{assessment}-{form}.html": theme.page(
            questions, paper_chrome(questions.title, language)
        ),
        f"answer-key-{assessment}-{form}.html": theme.page(key, paper_chrome(key.title, language)),
        STYLESHEET: theme.stylesheet(),
    }
    for name, text in pages.items():
        files.write_file(folder / name, text, private=name.startswith("answer-key"))
    return tuple(folder / name for name in pages if name != STYLESHEET)


def _refuse_built(root: Path, folder: Path) -> None:
    """Questions and keys never go where a handbook is built, kept or handed out."""
    where = folder.resolve()
    inside = any(where.is_relative_to((root / each).resolve()) for each in NOT_INTO)
    built = any((each / "store.html").is_file() for each in (where, *where.parents))
    if inside or built:
        raise RefusedError(
            f"{folder}: this is inside a handbook folder; name one with --into that is not"
            " handed out."
        )
