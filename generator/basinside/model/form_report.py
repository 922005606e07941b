"""What the author is told of a form and of its cut; never of anybody's answers."""

from __future__ import annotations

from dataclasses import dataclass

from basinside.model.words import Thinking


@dataclass(frozen=True, slots=True, kw_only=True)
class Chance:
    """How likely somebody passes who masters a share of the field.

    ``with_critical``: when the critical items of the form must all be right too; None where no one
    form is looked at, since each has its own.
    """

    percent: int
    once: float
    over_attempts: float
    with_critical: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class TopicDrawn:
    """A topic: items that the blueprint asks for, and those of the form or of the pool."""

    topic: str
    wanted: int
    have: int


@dataclass(frozen=True, slots=True, kw_only=True)
class ThinkingDrawn:
    """A kind of thinking, or a harder one: items asked for at least, and those of the form."""

    thinking: Thinking
    wanted: int
    have: int


@dataclass(frozen=True, slots=True, kw_only=True)
class CutReport:
    """What judges expect: shares in percent, and the cut for a form in items.

    ``asked`` is the cut of the assessment as it stands. ``se_judges`` and ``se_items`` are in
    percent of the items: judges alone drawn anew, and items as well.
    """

    assessment: str
    version: int
    rated_version: int
    judges: int
    rated: int
    percent: float
    se_judges: float
    se_items: float
    items: int
    needed: int
    asked: int
    asked_percent: int
    not_rated: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class FormReport:
    """Whether a form meets its blueprint, and what its length and its cut mean.

    ``form`` is its letter, or nothing when the pool is looked at. ``gone`` are items of a sealed
    form that the pool no longer has: their thinking is not known. ``expected`` is the percent that
    judges expect of somebody just able enough on these very items, where all were rated.
    """

    assessment: str
    version: int
    form: str
    items: int
    needed: int
    percent: int
    attempts: int
    topics: tuple[TopicDrawn, ...]
    thinking: tuple[ThinkingDrawn, ...]
    critical: int
    gone: tuple[str, ...]
    chances: tuple[Chance, ...]
    better: tuple[int, int] | None
    expected: float | None

    @property
    def met(self) -> bool:
        """Whether the blueprint is met: exactly by a form, at least by a pool."""
        exact = bool(self.form)
        topics = all(
            each.have == each.wanted if exact else each.have >= each.wanted for each in self.topics
        )
        return topics and all(each.have >= each.wanted for each in self.thinking)
