"""What every file that the program writes shares: frozen, strict, nothing unknown is dropped.

A later program may add members; this one keeps them, so that a file that passes through loses
nothing. Absent members are absent, never null.
"""

from __future__ import annotations

import json
from typing import Annotated, Final, Self

from pydantic import BaseModel, ConfigDict, StringConstraints, ValidationError
from pydantic_core import ErrorDetails

from basinside.model.entry import EDITION_PATTERN, STAFF_CODE_PATTERN

DAY_PATTERN: Final = r"^[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$"
MOMENT_PATTERN: Final = (
    r"^[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])T([01][0-9]|2[0-3]):[0-5][0-9]:[0-5][0-9]"
    r"(\.[0-9]{1,9})?(Z|[+-]([01][0-9]|2[0-3]):[0-5][0-9])$"
)
"""RFC 3339 with a zone; ``datetime.fromisoformat`` takes much more, so a pattern decides."""
DIGEST_PATTERN: Final = r"^[a-z]+-v1:[A-Za-z0-9_-]{43}$"

DayText = Annotated[str, StringConstraints(pattern=DAY_PATTERN)]
Moment = Annotated[str, StringConstraints(pattern=MOMENT_PATTERN)]
Digest = Annotated[str, StringConstraints(pattern=DIGEST_PATTERN)]
FormDigest = Annotated[str, StringConstraints(pattern=r"^form-v1:[A-Za-z0-9_-]{43}$")]
ScopeDigest = Annotated[str, StringConstraints(pattern=r"^scope-v1:[A-Za-z0-9_-]{43}$")]
LineDigest = Annotated[str, StringConstraints(pattern=r"^(step|line)-v1:[A-Za-z0-9_-]{43}$")]
StaffCode = Annotated[str, StringConstraints(pattern=STAFF_CODE_PATTERN)]
Edition = Annotated[str, StringConstraints(pattern=EDITION_PATTERN)]
Name = Annotated[str, StringConstraints(pattern=r"^[a-z0-9]+(-[a-z0-9]+)*$", max_length=80)]
FormName = Annotated[str, StringConstraints(pattern=r"^[A-Z]$")]
Language = Annotated[str, StringConstraints(pattern=r"^[A-Za-z]{2,3}(-[A-Za-z0-9]{2,8})*$")]
ShortText = Annotated[str, StringConstraints(max_length=4_000)]
Base64Url = Annotated[str, StringConstraints(pattern=r"^[A-Za-z0-9_-]*$")]
DidKey = Annotated[str, StringConstraints(pattern=r"^did:key:zDn[1-9A-HJ-NP-Za-km-z]{40,60}$")]
"""A P-256 key as did:key; ``certify.multikey`` decides whether it is one."""


class MachineFileError(ValueError):
    """A value that is not a file of the kind asked for; ``lines`` says what is wrong where."""

    def __init__(self, lines: tuple[str, ...]) -> None:
        super().__init__("; ".join(lines))
        self.lines = lines


class Part(BaseModel):
    """A part of a file that the program writes."""

    model_config = ConfigDict(
        frozen=True,
        extra="allow",
        strict=True,
        validate_by_name=True,
        validate_by_alias=True,
        serialize_by_alias=True,
    )

    def plain(self) -> dict[str, object]:
        """Return the value as it stands in the file: plain JSON, absent members left out."""
        return self.model_dump(mode="json", by_alias=True, exclude_none=True)

    @classmethod
    def from_plain(cls, value: object) -> Self:
        """Return the value that a file holds.

        Raises ``MachineFileError`` with one line for each thing that is wrong.
        """
        try:
            # By way of JSON, so that lists become tuples while text never becomes a number; and by
            # the names that stand in files: ``valid_from`` is a stranger beside ``validFrom``.
            return cls.model_validate_json(json.dumps(value), by_alias=True, by_name=False)
        except ValidationError as error:
            raise MachineFileError(
                tuple(_line(each) for each in error.errors(include_url=False, include_input=False))
            ) from None
        except (TypeError, ValueError, RecursionError):
            raise MachineFileError(("the file: not a JSON value",)) from None

    def text(self) -> str:
        """Return the file's text: indented JSON with a line feed at its end."""
        return json.dumps(self.plain(), ensure_ascii=False, indent=1) + "\n"


_PLAIN_WORDS: Final = {
    "missing": "this is missing",
    "string_type": "text belongs here",
    "string_pattern_mismatch": "this is not written as our files write it",
    "string_too_long": "this text is too long",
    "string_too_short": "this text is too short",
    "too_short": "there is too little here",
    "too_long": "there is too much here",
}
"""What is said for a kind of mistake; for the others pydantic's own words are plain enough."""


def _line(error: ErrorDetails) -> str:
    """Where and what is wrong, in words for people who do not write programs."""
    place = ".".join(str(key) for key in error["loc"]) or "the file"
    if error["type"] == "value_error":
        return f"{place}: {error['ctx']['error']}"
    return f"{place}: {_PLAIN_WORDS.get(error['type'], error['msg'])}"
