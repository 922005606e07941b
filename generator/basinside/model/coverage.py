"""What an assessment covers, for its author: topics, thinking, and the safety steps it can ask."""

from __future__ import annotations

from dataclasses import dataclass

from basinside.model.words import Thinking


@dataclass(frozen=True, slots=True, kw_only=True)
class TopicCovered:
    """One topic of an assessment: its share, items of each form, and items in the pool.

    ``thinking`` and ``critical`` count the items of the pool.
    """

    topic: str
    percent: int
    in_a_form: int
    pool: int
    critical: int
    thinking: tuple[tuple[Thinking, int], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class StepCovered:
    """A safety step and the ids of the items of the pool that ask about it."""

    number: int
    step: str
    do: str
    items: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ProcedureCovered:
    """The safety steps of a procedure for which the policy asks for this assessment."""

    procedure: str
    steps: tuple[StepCovered, ...]

    @property
    def asked(self) -> int:
        """How many of its safety steps an item asks about."""
        return sum(bool(each.items) for each in self.steps)


@dataclass(frozen=True, slots=True, kw_only=True)
class AssessmentCovered:
    """An assessment and what it covers."""

    assessment: str
    title: str
    items: int
    forms: int
    topics: tuple[TopicCovered, ...]
    procedures: tuple[ProcedureCovered, ...]
