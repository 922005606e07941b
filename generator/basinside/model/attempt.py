"""One person's answers to one form or one self-test: answers, never scores."""

from __future__ import annotations

from typing import Annotated, Literal, Self

from pydantic import Field, StringConstraints, model_validator

from basinside.model.machine_file import (
    DayText,
    Edition,
    FormDigest,
    FormName,
    Language,
    Name,
    Part,
    StaffCode,
)

Position = Annotated[int, Field(ge=0, le=99)]
Decimal = Annotated[str, StringConstraints(pattern=r"^-?[0-9]{1,12}(\.[0-9]{1,12})?$")]


class Answer(Part):
    """The answer to one item; an item that was not answered has none of the three members.

    ``chosen`` and ``ordered`` are positions in the order in which the options were shown: the
    form's stored order, or in a self-test the ``order`` that stands beside them (authored
    positions, in the order shown). Of a match a position is left x number of right sides + right;
    in its ``order`` the right sides stand alike for each left one. ``number`` is in the unit that
    the item asks for, whatever unit was typed.
    """

    item: Name
    order: tuple[Position, ...] | None = None
    chosen: tuple[Position, ...] | None = None
    ordered: tuple[Position, ...] | None = None
    number: Decimal | None = None
    seconds: Annotated[int, Field(ge=0, le=86_400)] | None = None
    changes: Annotated[int, Field(ge=0, le=10_000)] | None = None

    @model_validator(mode="after")
    def _agree(self) -> Self:
        given = [each for each in (self.chosen, self.ordered, self.number) if each is not None]
        if len(given) > 1:
            raise ValueError("an item has one answer: chosen, ordered or number")
        if self.chosen is not None and tuple(sorted(set(self.chosen))) != self.chosen:
            raise ValueError("chosen positions rise and none stands twice")
        for each in (self.ordered, self.order):
            if each is not None and sorted(each) != list(range(len(each))):
                raise ValueError("an order names each position once")
        return self


class Attempt(Part):
    """``*.attempt.json``. ``id`` is the assessment's or the topic's; items stand in form order."""

    format: Literal["basinside/attempt/1"] = "basinside/attempt/1"
    handbook: Name
    edition: Edition
    kind: Literal["assessment", "self-test"]
    id: Name
    form: FormName | None = None
    form_digest: FormDigest | None = None
    staff_code: StaffCode
    date: DayText
    language: Language
    items: Annotated[tuple[Answer, ...], Field(max_length=2_000)]

    @model_validator(mode="after")
    def _agree(self) -> Self:
        has_form = self.form is not None and self.form_digest is not None
        if self.kind == "assessment" and not has_form:
            raise ValueError("an attempt of an assessment names its form and the form's digest")
        if self.kind == "self-test" and (self.form or self.form_digest):
            raise ValueError("a self-test has no form")
        names = [each.item for each in self.items]
        if len(set(names)) != len(names):
            raise ValueError("an item stands twice")
        return self
