"""Attempts and observations to results: every score is computed here again, from the answers."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from basinside.certify.evidence import answers_digest, observation_digest
from basinside.derive.checklists import line_digests
from basinside.derive.editions import edition_key
from basinside.derive.scopes import procedure_scope_digest
from basinside.model.attempt import Attempt
from basinside.model.observed import Observation
from basinside.model.results import AttemptResult, ObservationResult
from basinside.pipeline.build import Clinic
from basinside.pipeline.forms import OpenForm, opened_form, opened_keys, sound_clinic
from basinside.pipeline.machine_files import as_part, read_object
from basinside.pipeline.refusal import RefusedError
from basinside.render.score_words import (
    attempt_lines,
    observation_lines,
    result_data,
    tally_line,
)
from basinside.score.attempts import score_attempt
from basinside.score.observations import score_observation
from basinside.score.refusal import NotScoredError


@dataclass(frozen=True, slots=True, kw_only=True)
class Scored:
    """A file and what it came to."""

    path: Path
    result: AttemptResult | ObservationResult


class Scorer:
    """Scores files of one clinic; each form is opened once."""

    def __init__(self, root: Path, phrase: str | None, clinic: Clinic | None = None) -> None:
        """Take the clinic's folder and the marking phrase as typed (None: no attempts)."""
        self.root = root
        self.phrase = phrase
        self.clinic = clinic or sound_clinic(root)
        self._forms: dict[tuple[str, str], tuple[OpenForm, dict[str, Any]]] = {}

    def score(self, path: Path) -> Scored:
        """Return what an attempt or observation file came to.

        Raises:
            FolderError: when it cannot be read.
            RefusedError: when it is neither, or cannot count here.
        """
        value = read_object(path)
        kind = str(value.get("format", ""))
        if kind.startswith("basinside/attempt/"):
            attempt = as_part(value, Attempt, path.name)
            return Scored(path=path, result=self._attempt(attempt, path.name))
        if kind.startswith("basinside/observation/"):
            observation = as_part(value, Observation, path.name)
            return Scored(path=path, result=self._observation(observation, path.name))
        raise RefusedError(f"{path.name}: this is neither an attempt nor an observation.")

    def _attempt(self, attempt: Attempt, name: str) -> AttemptResult:
        if attempt.kind != "assessment" or attempt.form is None:
            raise RefusedError(
                f"{name}: this is a self-test on {attempt.id}. Self-tests are practice, their"
                " keys are open; they are no evidence."
            )
        if self.phrase is None:
            raise RefusedError(f"{name}: the marking phrase is needed to score an attempt.")
        known = (attempt.id, attempt.form)
        if known not in self._forms:
            self._forms[known] = (
                opened_form(self.root, *known, phrase=self.phrase),
                opened_keys(self.root, *known, self.phrase),
            )
        form, keys = self._forms[known]
        try:
            return score_attempt(
                attempt,
                form.document,
                keys,
                form_digest=form.digest,
                answers_digest=answers_digest(attempt),
            )
        except NotScoredError as error:
            raise RefusedError(f"{name}: {error}") from None

    def _observation(self, observation: Observation, name: str) -> ObservationResult:
        content = self.clinic.content
        handbook = content.handbook
        if handbook is None or observation.handbook != handbook.handbook:
            raise RefusedError(f"{name}: this is of handbook {observation.handbook}.")
        whole = self.clinic.derived.procedures.get(observation.procedure)
        if whole is None:
            raise RefusedError(f"{name}: there is no procedure {observation.procedure} here.")
        entry = content.procedures[observation.procedure]
        said = (
            ("instrument", observation.instrument, entry.instrument),
            ("route", observation.route, entry.route),
        )
        for what, theirs, ours in said:
            if theirs != ours:
                raise RefusedError(
                    f"{name}: {observation.procedure} is of {what} {ours or 'none'};"
                    f" the sheet says {theirs or 'none'}."
                )
        if edition_key(observation.edition) > edition_key(handbook.edition):
            raise RefusedError(
                f"{name}: edition {observation.edition} is later than this handbook's,"
                f" {handbook.edition}."
            )
        try:
            return score_observation(
                observation,
                line_digests(content, whole),
                scope_digest=procedure_scope_digest(content, observation.procedure),
                observation_digest=observation_digest(observation),
            )
        except NotScoredError as error:
            raise RefusedError(f"{name}: {error}") from None


def has_attempt(paths: Sequence[Path]) -> bool:
    """Return whether a marking phrase is needed for these files."""
    return any(
        str(value.get("format", "")).startswith("basinside/attempt/")
        and value.get("kind") == "assessment"
        for value in map(read_object, paths)
    )


def told(scored: Scored) -> list[str]:
    """Return what a file came to, in words."""
    if isinstance(scored.result, AttemptResult):
        return attempt_lines(scored.result)
    return observation_lines(scored.result)


def is_good(scored: Scored) -> bool:
    """Return whether an attempt is passed, or a run counts."""
    result = scored.result
    return result.passed if isinstance(result, AttemptResult) else result.counts


def told_together(scored: Sequence[Scored]) -> str:
    """Return the last line: how many are good."""
    return tally_line(len(scored), sum(is_good(each) for each in scored))


def told_to_a_tool(scored: Sequence[Scored]) -> list[dict[str, object]]:
    """Return what files came to, for a tool."""
    return [{"file": str(each.path), **result_data(each.result)} for each in scored]
