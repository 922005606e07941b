"""Envelopes, and the file that keeps one form of an assessment sealed."""

from __future__ import annotations

from typing import Annotated, Literal, Self

from pydantic import Field, StringConstraints, model_validator

from basinside.constants import IV_BYTES, KDF, SALT_BYTES
from basinside.model.machine_file import Base64Url, FormName, Name, Part

Purpose = Literal[
    "form",
    "keys",
    "open-form",
    "phrase-form",
    "mark-keys",
    "phrase-keys",
    "draft",
    "supervisor-key",
    "root-key",
]
Format = Literal["basinside/sealed/1", "basinside/key/1", "basinside/draft/1"]


def _letters(octets: int) -> int:
    """Letters of base64url text without padding for so many octets."""
    return -(-octets * 4 // 3)


Iv = Annotated[
    Base64Url, StringConstraints(min_length=_letters(IV_BYTES), max_length=_letters(IV_BYTES))
]
Salt = Annotated[
    Base64Url, StringConstraints(min_length=_letters(SALT_BYTES), max_length=_letters(SALT_BYTES))
]


class EnvelopeHeader(Part):
    """What an envelope says of itself; its canonical JSON is sealed together with the content.

    An envelope under a random content key has no ``kdf``, ``iterations`` and ``salt``; one under
    a code or a phrase has all three. ``demo`` marks what proves nothing.
    """

    format: Format
    purpose: Purpose
    handbook: Name | None = None
    assessment: Name | None = None
    version: Annotated[int, Field(ge=1)] | None = None
    form: FormName | None = None
    demo: Literal[True] | None = None
    kdf: Literal["PBKDF2-SHA-256"] | None = None
    iterations: int | None = None
    salt: Salt | None = None
    iv: Iv

    @model_validator(mode="after")
    def _agree(self) -> Self:
        if len({self.kdf is None, self.iterations is None, self.salt is None}) > 1:
            raise ValueError(f"{KDF} needs kdf, iterations and salt together")
        return self


class Envelope(Part):
    """A header and the ciphertext with its 16-octet tag appended, base64url without padding."""

    header: EnvelopeHeader
    ciphertext: Annotated[Base64Url, StringConstraints(min_length=_letters(16))]


class SealedEnvelopes(Part):
    """The six envelopes of a sealed form: two contents, and their keys wrapped twice each."""

    form: Envelope
    open_form: Envelope
    phrase_form: Envelope
    keys: Envelope
    mark_keys: Envelope
    phrase_keys: Envelope


class SealedForm(Part):
    """``quizzes/sealed/ASSESSMENT-FORM.json``."""

    format: Literal["basinside/sealed/1"] = "basinside/sealed/1"
    handbook: Name
    assessment: Name
    version: Annotated[int, Field(ge=1)]
    form: FormName
    envelopes: SealedEnvelopes
