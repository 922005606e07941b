"""Sealing one form of an assessment, and opening it again.

The form and its keys lie under two random content keys. The form's key is wrapped under the
form's opening code and under the marking phrase; the keys' key under the form's marking code and
under the marking phrase. Once the marking code is typed anywhere, the form is spent.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from basinside.canonical import canonical_bytes, digest
from basinside.constants import CONTENT_KEY_BYTES
from basinside.model.sealed import Envelope, EnvelopeHeader, Purpose, SealedEnvelopes, SealedForm
from basinside.seal.codes import new_opening_code, new_phrase, read_opening_code, read_phrase
from basinside.seal.envelope import (
    AlteredFileError,
    open_with_code,
    open_with_key,
    seal_with_code,
    seal_with_key,
)

_NOT_YET = "A" * 16
"""Stands where the envelope puts its own iv."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FormName:
    """Which form this is: what every header of its envelopes says."""

    handbook: str
    assessment: str
    version: int
    form: str
    demo: bool = False

    def header(self, purpose: Purpose) -> EnvelopeHeader:
        """Return the header of one envelope, still without iv and salt."""
        return EnvelopeHeader(
            format="basinside/sealed/1",
            purpose=purpose,
            handbook=self.handbook,
            assessment=self.assessment,
            version=self.version,
            form=self.form,
            demo=True if self.demo else None,
            iv=_NOT_YET,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class FormCodes:
    """What opens one form, shown once and printed: never kept beside the sealed file."""

    opening_code: str
    marking_code: str


def seal_form(
    form: Mapping[str, object],
    keys: Mapping[str, object],
    *,
    name: FormName,
    marking_phrase: str,
    random_bytes: Callable[[int], bytes],
) -> tuple[SealedForm, FormCodes]:
    """Return the sealed form and its two codes.

    ``form`` is what a learner may see, ``keys`` what decides; both plain JSON values without
    floats. ``marking_phrase`` is the phrase of all forms, as typed. Raises ``CodeError`` when it
    is no phrase.
    """
    phrase = read_phrase(marking_phrase)
    codes = FormCodes(
        opening_code=new_opening_code(random_bytes), marking_code=new_phrase(random_bytes)
    )
    form_key, keys_key = random_bytes(CONTENT_KEY_BYTES), random_bytes(CONTENT_KEY_BYTES)

    def wrapped(key: bytes, code: str, purpose: Purpose) -> Envelope:
        return seal_with_code(key, code, name.header(purpose), random_bytes)

    def under(key: bytes, content: Mapping[str, object], purpose: Purpose) -> Envelope:
        return seal_with_key(canonical_bytes(content), key, name.header(purpose), random_bytes)

    envelopes = SealedEnvelopes(
        form=under(form_key, form, "form"),
        open_form=wrapped(form_key, read_opening_code(codes.opening_code), "open-form"),
        phrase_form=wrapped(form_key, phrase, "phrase-form"),
        keys=under(keys_key, keys, "keys"),
        mark_keys=wrapped(keys_key, codes.marking_code, "mark-keys"),
        phrase_keys=wrapped(keys_key, phrase, "phrase-keys"),
    )
    sealed = SealedForm(
        handbook=name.handbook,
        assessment=name.assessment,
        version=name.version,
        form=name.form,
        envelopes=envelopes,
    )
    return sealed, codes


def form_digest(sealed: SealedForm) -> str:
    """Return ``form-v1``: the form's envelope alone, not the keys' and not the wraps."""
    envelope = sealed.envelopes.form
    return digest("form", {"header": envelope.header.plain(), "ciphertext": envelope.ciphertext})


def open_form(
    sealed: SealedForm, *, opening_code: str | None = None, phrase: str | None = None
) -> dict[str, object]:
    """Return the form, opened by its opening code or by the marking phrase, as typed.

    Raises ``CodeError`` when what was typed is no code, ``SealError`` when it does not open.
    """
    _check_names(sealed)
    inside = sealed.envelopes
    if opening_code is not None:
        key = open_with_code(inside.open_form, read_opening_code(opening_code), "open-form")
    else:
        key = open_with_code(inside.phrase_form, read_phrase(phrase or ""), "phrase-form")
    return _value(open_with_key(inside.form, key, "form"))


def open_keys(
    sealed: SealedForm, *, marking_code: str | None = None, phrase: str | None = None
) -> dict[str, object]:
    """Return the form's keys, opened by its marking code or by the marking phrase, as typed.

    Raises ``CodeError`` when what was typed is no code, ``SealError`` when it does not open.
    """
    _check_names(sealed)
    inside = sealed.envelopes
    if marking_code is not None:
        key = open_with_code(inside.mark_keys, read_phrase(marking_code), "mark-keys")
    else:
        key = open_with_code(inside.phrase_keys, read_phrase(phrase or ""), "phrase-keys")
    return _value(open_with_key(inside.keys, key, "keys"))


def _check_names(sealed: SealedForm) -> None:
    """Every envelope is of the form that the file says it is."""
    said = (sealed.handbook, sealed.assessment, sealed.version, sealed.form)
    inside = sealed.envelopes
    for each in (
        inside.form,
        inside.open_form,
        inside.phrase_form,
        inside.keys,
        inside.mark_keys,
        inside.phrase_keys,
    ):
        header = each.header
        if (header.handbook, header.assessment, header.version, header.form) != said:
            raise AlteredFileError("The file was put together from envelopes of different forms.")


def _value(content: bytes) -> dict[str, object]:
    value = json.loads(content)
    if not isinstance(value, dict):
        raise AlteredFileError("The envelope does not hold a form.")
    return value
