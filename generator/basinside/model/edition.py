"""``content/editions/YYYY.N.json``: one closed edition, everything that counts in the clear."""

from __future__ import annotations

from typing import Annotated, Any, Literal, Self

from pydantic import Field, StringConstraints, model_validator

from basinside.model.machine_file import Digest, Edition, Name, Part, ScopeDigest

StagedStep = Annotated[tuple[str, str], Field(strict=False)]
"""(stage, step id)."""


class ClosedValue(Part):
    """A value as it stood: in its base unit, as shown, and what it is."""

    base: str
    shown: str
    is_: str = Field(alias="is")


class ClosedProcedure(Part):
    """A procedure as it stood: the order of its steps, what each means, and their digests."""

    instrument: Name | None = None
    sequence: Annotated[tuple[StagedStep, ...], Field(strict=False)]
    sequence_digest: Digest
    scope_digest: ScopeDigest
    steps: dict[str, dict[str, Any]]
    step_digests: dict[str, Digest]
    lines: dict[str, Digest]
    wording_only_since: dict[str, Edition] = {}

    @model_validator(mode="after")
    def _agree(self) -> Self:
        named = [step for _, step in self.sequence]
        if sorted(named) != sorted(self.steps) or set(named) != set(self.step_digests):
            raise ValueError("sequence, steps and step_digests name the same steps")
        return self


class ClosedScope(Part):
    """A group of procedures as it stood."""

    procedures: Annotated[tuple[Name, ...], Field(strict=False)]
    digest: ScopeDigest


class ClosedBasis(Part):
    """What a value rested on: its basis, and its citation where it has one."""

    basis: str
    source: str | None = None


class ClosedEdition(Part):
    """The whole file; what only later programs keep (bases, sources, assessments) may be absent."""

    format: Literal["basinside/edition/1"]
    handbook: Annotated[str, StringConstraints(max_length=80)]
    edition: Edition
    values: dict[str, ClosedValue]
    choices: dict[str, str]
    procedures: dict[str, ClosedProcedure]
    scopes: dict[str, ClosedScope]
    bases: dict[str, ClosedBasis] | None = None
    sources: dict[str, str] | None = None
    assessments: dict[str, dict[str, Any]] | None = None
