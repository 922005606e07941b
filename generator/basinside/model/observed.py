"""What an observer saw one person do, line by line: an unsigned claim until it is signed for."""

from __future__ import annotations

from typing import Annotated, Literal, Self

from pydantic import Field, StringConstraints, model_validator

from basinside.model.machine_file import (
    DayText,
    Edition,
    LineDigest,
    Name,
    Part,
    ScopeDigest,
    ShortText,
    StaffCode,
)
from basinside.model.words import LineVerdict, Setting

Clock = Annotated[str, StringConstraints(pattern=r"^([01][0-9]|2[0-3]):[0-5][0-9]$")]


class ObservedLine(Part):
    """One line of the checklist: its id, the digest of what it means, and what was seen.

    ``meaning`` is a step's meaning (``step-v1``) or the digest of a line written by hand
    (``line-v1``); ``why`` is asked for wherever the verdict is not ``met``.
    """

    line: Annotated[str, StringConstraints(pattern=r"^[a-z0-9]+([/-][a-z0-9]+)*$", max_length=160)]
    meaning: LineDigest
    verdict: LineVerdict
    why: ShortText | None = None


class SecondObserver(Part):
    """What a second observer saw of the same run."""

    observer_staff_code: StaffCode
    lines: Annotated[tuple[ObservedLine, ...], Field(max_length=500)]


class Observation(Part):
    """``*.observation.json``: one run of one procedure on one day.

    A task without an instrument or without a route leaves that member out.
    ``announced`` is false for a spot check; ``help`` says whether the observer had to help.
    """

    format: Literal["basinside/observation/1"] = "basinside/observation/1"
    handbook: Name
    edition: Edition
    procedure: Name
    scope_digest: ScopeDigest
    instrument: Name | None = None
    route: Name | None = None
    learner_staff_code: StaffCode
    observer_staff_code: StaffCode
    date: DayText
    start: Clock
    end: Clock | None = None
    setting: Setting
    announced: bool
    help: bool
    lines: Annotated[tuple[ObservedLine, ...], Field(min_length=1, max_length=500)]
    comments: ShortText | None = None
    second_observer: SecondObserver | None = None

    @model_validator(mode="after")
    def _agree(self) -> Self:
        observers = {self.observer_staff_code}
        if self.second_observer is not None:
            observers.add(self.second_observer.observer_staff_code)
            if len(observers) == 1:
                raise ValueError("the second observer is somebody else")
        if self.learner_staff_code in observers:
            raise ValueError("nobody observes themselves")
        names = [each.line for each in self.lines]
        if len(set(names)) != len(names):
            raise ValueError("a line stands twice")
        return self
