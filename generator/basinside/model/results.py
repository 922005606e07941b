"""What scoring made of an attempt or an observation: values that policies are judged on."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Literal

from basinside.model.words import LineVerdict, Setting


@dataclass(frozen=True, slots=True, kw_only=True)
class ItemResult:
    """What one answer is worth, in points, and the texts of the unsafe options that were chosen.

    ``letters`` are the options chosen as they are called on paper (A is the first).
    """

    item: str
    topic: str
    stem: str
    critical: bool
    letters: str
    points: int
    worth: int
    passed: bool
    unsafe: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class TopicResult:
    """Items passed of items asked in one topic (counts)."""

    topic: str
    passed: int
    of: int


@dataclass(frozen=True, slots=True, kw_only=True)
class AttemptResult:
    """One attempt, scored again from its answers: points, topics, and what was missed.

    ``needed`` are the points to pass; an item is worth 60. ``digest`` is the answers' own.
    """

    digest: str
    assessment: str
    form: str
    edition: str
    learner: str
    date: date
    points: int
    of_points: int
    needed: int
    items_needed: int
    passed: bool
    items: tuple[ItemResult, ...]
    topics: tuple[TopicResult, ...]

    @property
    def items_passed(self) -> int:
        """How many items were passed."""
        return sum(each.passed for each in self.items)

    @property
    def critical_missed(self) -> tuple[ItemResult, ...]:
        """The critical items that were not passed."""
        return tuple(each for each in self.items if each.critical and not each.passed)

    @property
    def unsafe_chosen(self) -> tuple[ItemResult, ...]:
        """The items at which an unsafe option was chosen."""
        return tuple(each for each in self.items if each.unsafe)


ReasonNot = Literal[
    "line-missing",
    "line-unknown",
    "line-outdated",
    "line-not-met",
    "second-observer-differs",
    "help-needed",
    "scope-changed",
]


@dataclass(frozen=True, slots=True, kw_only=True)
class WhyNot:
    """One reason why a run does not count; ``line`` and ``verdict`` when it is about a line."""

    reason: ReasonNot
    line: str = ""
    verdict: LineVerdict | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ObservationResult:
    """One observed run, and whether it counts: it does when ``why_not`` is empty.

    ``current`` says whether the procedure still means what it meant when it was observed;
    ``start`` and ``end`` are times of the clock (``09:10``), empty where none was written.
    """

    digest: str
    procedure: str
    edition: str
    learner: str
    observers: tuple[str, ...]
    date: date
    setting: Setting
    announced: bool
    current: bool
    why_not: tuple[WhyNot, ...]
    start: str = ""
    end: str = ""

    @property
    def counts(self) -> bool:
        """Whether the run counts towards the policy."""
        return not self.why_not
