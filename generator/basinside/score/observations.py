"""Whether one observed run counts: every line met, no help, and nothing changed since."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from basinside.model.observed import Observation, ObservedLine
from basinside.model.results import ObservationResult, WhyNot
from basinside.score.refusal import day_of


def score_observation(
    observation: Observation,
    lines: Mapping[str, str],
    *,
    scope_digest: str,
    observation_digest: str,
) -> ObservationResult:
    """Return whether a run counts, and every reason why it does not.

    Args:
        observation: what was seen.
        lines: the current checklist: line -> digest of what it means.
        scope_digest: ``scope-v1`` of the procedure as it stands now.
        observation_digest: ``observation-v1`` of the observation.

    A line that was not seen does not count as met. A line that means something else by now, or a
    line that is missing, leaves the run without a verdict on it.
    """
    reasons = list(_about_lines(observation.lines, lines))
    second = observation.second_observer
    if second is not None and any(_about_lines(second.lines, lines)):
        reasons.append(WhyNot(reason="second-observer-differs"))
    if observation.help:
        reasons.append(WhyNot(reason="help-needed"))
    current = observation.scope_digest == scope_digest
    if not current:
        reasons.append(WhyNot(reason="scope-changed"))
    observers = [observation.observer_staff_code]
    if second is not None:
        observers.append(second.observer_staff_code)
    return ObservationResult(
        digest=observation_digest,
        procedure=observation.procedure,
        edition=observation.edition,
        learner=observation.learner_staff_code,
        observers=tuple(observers),
        date=day_of(observation.date),
        setting=observation.setting,
        announced=observation.announced,
        current=current,
        why_not=tuple(reasons),
        start=observation.start,
        end=observation.end or "",
    )


def _about_lines(seen: tuple[ObservedLine, ...], lines: Mapping[str, str]) -> Iterator[WhyNot]:
    by_name = {each.line: each for each in seen}
    for name, meaning in lines.items():
        line = by_name.get(name)
        if line is None:
            yield WhyNot(reason="line-missing", line=name)
        elif line.meaning != meaning:
            yield WhyNot(reason="line-outdated", line=name)
        elif line.verdict != "met":
            yield WhyNot(reason="line-not-met", line=name, verdict=line.verdict)
    for name in by_name:
        if name not in lines:
            yield WhyNot(reason="line-unknown", line=name)
