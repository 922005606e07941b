"""What every entry shares: it is frozen, knows its place, and refuses keys it does not know.

Scalars reach a model as text; the types here say what the text must be. Sequences arrive as
tuples, and each mapping carries its place under the key ``@``, which no author can write.
"""

from __future__ import annotations

import re
from datetime import date
from typing import Annotated, Any, Final, TypeVar

from pydantic import (
    AfterValidator,
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Field,
    GetJsonSchemaHandler,
    SkipValidation,
    StringConstraints,
    WithJsonSchema,
)
from pydantic_core import CoreSchema

from basinside.model.prose import ProseError, read_prose
from basinside.problem import Place
from basinside.quantity import Quantity, QuantityError, parse_quantity

PLACE_KEY: Final = "@"
ID_PATTERN: Final = r"^[a-z0-9]+(-[a-z0-9]+)*$"
FIGURE_ID_PATTERN: Final = r"^[a-z0-9]+(-[a-z0-9]+)*(\.[a-z0-9]+(-[a-z0-9]+)*)+$"
CITATION_PATTERN: Final = r"^[a-z0-9]+(-[a-z0-9]+)*( [^,]+)?$"
EDITION_PATTERN: Final = r"^[0-9]{4}\.[1-9][0-9]*$"
STAFF_CODE_PATTERN: Final = r"^[A-Z]{1,3}-[0-9]{2,4}$"
LONGEST_TEXT: Final = 4_000
"""Characters in one sentence or note; a longer one is a paste gone wrong (our own cap)."""

_TRUTHS = {"yes": True, "true": True, "no": False, "false": False}
_NO_WORDS = re.compile(r"</?[a-z!?][^ ]*|(?:javascript|data|file):\S+|\w+://\S*", re.IGNORECASE)
"""Markup and addresses: a page would show them as they are, and an offline one leads nowhere."""
_DAY = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}\Z")


class Entry(BaseModel):
    """Something an author wrote."""

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True, populate_by_name=False)

    place: Annotated[Place, SkipValidation, Field(alias=PLACE_KEY, exclude=True)]


def _truth(value: object) -> object:
    if isinstance(value, str) and value.lower() in _TRUTHS:
        return _TRUTHS[value.lower()]
    raise ValueError("write yes or no")


def _count(value: object) -> object:
    if isinstance(value, str) and value.isascii() and value.isdigit() and len(value) < 10:
        return int(value)
    raise ValueError("write a whole number")


def _at_least_one(value: object) -> object:
    if _count(value) == 0:
        raise ValueError("write 1 or more")
    return _count(value)


def _day(value: object) -> object:
    if isinstance(value, str) and _DAY.match(value):
        try:
            return date.fromisoformat(value)
        except ValueError:
            pass
    raise ValueError("write a day as 2026-11-20")


def _percent(value: object) -> object:
    found = re.fullmatch(r"([0-9]{1,3}) ?%?", value) if isinstance(value, str) else None
    if found and int(found.group(1)) <= 100:
        return int(found.group(1))
    raise ValueError("write a share of the whole as 20 %")


def _amount(value: object) -> object:
    if not isinstance(value, str):
        raise ValueError("write a number with its unit, as in 20 min")
    try:
        return parse_quantity(value)
    except QuantityError as error:
        raise ValueError(str(error)) from None


def _text(value: str) -> str:
    if "{{" in value or "}}" in value:
        raise ValueError("a value stands in sentences only, not in a name or a note of this kind")
    return value


def _prose(value: str) -> str:
    if "<" in value or ":" in value:
        found = _NO_WORDS.search(value)
        if found:
            raise ValueError(
                f"“{found[0]}” is no word for a reader; a sentence holds no markup and no address"
            )
    if "{" in value or "}}" in value:
        try:
            read_prose(value)
        except ProseError as error:
            raise ValueError(str(error)) from None
    return value


def _without_place(value: object) -> object:
    if isinstance(value, dict):
        return {key: each for key, each in value.items() if key != PLACE_KEY}
    return value


def _one_or_more(value: object) -> object:
    return (value,) if isinstance(value, str) else value


K = TypeVar("K")
V = TypeVar("V")

_TEXT_SCHEMA: dict[str, Any] = {"type": ["string", "number"]}
_TRUTH_SCHEMA: dict[str, Any] = {"enum": [True, False, "yes", "no", "true", "false"]}

Text = Annotated[
    str,
    StringConstraints(min_length=1, max_length=LONGEST_TEXT),
    AfterValidator(_text),
    WithJsonSchema(_TEXT_SCHEMA),
]
Prose = Annotated[
    str,
    StringConstraints(min_length=1, max_length=LONGEST_TEXT),
    AfterValidator(_prose),
    WithJsonSchema(_TEXT_SCHEMA),
]
Truth = Annotated[bool, BeforeValidator(_truth), WithJsonSchema(_TRUTH_SCHEMA)]
Count = Annotated[int, BeforeValidator(_count), WithJsonSchema({"type": ["integer", "string"]})]
AtLeastOne = Annotated[
    int, BeforeValidator(_at_least_one), WithJsonSchema({"type": ["integer", "string"]})
]
Percent = Annotated[int, BeforeValidator(_percent), WithJsonSchema({"type": ["integer", "string"]})]
Day = Annotated[date, BeforeValidator(_day), WithJsonSchema({"type": "string", "format": "date"})]
Amount = Annotated[
    Quantity,
    SkipValidation,
    BeforeValidator(_amount),
    WithJsonSchema({"type": ["string", "number"]}),
]
Id = Annotated[str, StringConstraints(pattern=ID_PATTERN, max_length=80)]
FigureId = Annotated[str, StringConstraints(pattern=FIGURE_ID_PATTERN, max_length=80)]
Citation = Annotated[str, StringConstraints(pattern=CITATION_PATTERN, max_length=200)]
EditionId = Annotated[
    str,
    StringConstraints(pattern=EDITION_PATTERN),
    WithJsonSchema({"type": ["string", "number"], "pattern": EDITION_PATTERN}),
]
StepPath = Annotated[
    str, StringConstraints(pattern=r"^[a-z0-9]+(-[a-z0-9]+)*/[a-z0-9]+(-[a-z0-9]+)*$")
]

Mapping = Annotated[dict[K, V], BeforeValidator(_without_place)]
"""A mapping whose keys an author chooses."""


class _OrOne:
    """Lets the schema for editors accept what ``_one_or_more`` accepts."""

    def __get_pydantic_json_schema__(
        self, core: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        many = handler(core)
        return {"anyOf": [many["items"], many]}


OneOrMore = Annotated[tuple[V, ...], BeforeValidator(_one_or_more), _OrOne()]
"""A list of which a single entry may stand without brackets."""


class FigureRef(Entry):
    """``{figure: boil.hold}``: the value of a field, kept once."""

    figure: FigureId


class Decided(Entry):
    """A decision by name: two people, the day, and when to look again or when it ends."""

    by: Text
    second: Text | None = None
    on: Day
    look_again: Day | None = None
    until: Day | None = None


class Waiver(Decided):
    """A rule that does not hold here for a while, and why."""

    rule: Id
    because: Prose


class Waivable(Entry):
    """An entry at which a rule can be waived."""

    waive: tuple[Waiver, ...] = ()
