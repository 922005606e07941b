"""Judge a policy on evidence: one finding for each line, with what was asked and what there is.

Lines that only a register could decide (lapses, the way back, attempts made elsewhere, whether
the observers' own records were in date) are left open. No line is passed for want of evidence.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from itertools import combinations
from typing import Final

from basinside.certify.days import NotADurationError, day_before
from basinside.model.derived import Policy
from basinside.model.finding import Finding, Verdict, fails, holds, not_judged, unknown
from basinside.model.handbook import PracticeNeed
from basinside.model.results import AttemptResult, ObservationResult
from basinside.quantity import Quantity

POLICY_LINES: Final = (
    "knowledge-passed",
    "knowledge-recent",
    "attempts-allowed",
    "practice-runs",
    "practice-real",
    "practice-observers",
    "practice-days",
    "practice-recent",
)
"""Lines that a supervisor may override by name, with a reason; no other finding can be."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """What is asked of whom: the policy, the procedures of the scope, the people, the day.

    ``attempts_allowed`` is how often the policy's assessment may be sat; ``edition`` is the
    current one.
    """

    policy: Policy
    procedures: tuple[str, ...]
    edition: str
    learner: str
    signer: str
    on: date
    attempts_allowed: int | None = None


def judge_policy(
    case: Case,
    attempts: Sequence[AttemptResult],
    observations: Sequence[ObservationResult],
) -> tuple[Finding, ...]:
    """Return one finding for each line of the policy and for each thing evidence must be.

    Args:
        case: what is asked, of whom, on which day.
        attempts: scored attempts, in any order.
        observations: scored observations, in any order.
    """
    policy = case.policy
    evidence: Results = (*attempts, *observations)
    found = [
        _signer(case),
        _learner(case, evidence),
        _observers(case, observations),
        _once(evidence),
        _not_later(case, evidence),
        _current(case, attempts, observations),
        _said("lasts", policy.lasts),
        # Nobody may work alone on a knowledge test.
        _said("practice-asked", policy.practice),
    ]
    if policy.knowledge is not None:
        found.extend(_knowledge(case, attempts))
    if policy.practice is not None:
        for procedure in case.procedures:
            found.extend(_practice(case, policy.practice, procedure, observations))
        found.append(not_judged("observers-entitled"))
    if policy.lapses_if_not_done_for is not None:
        found.append(not_judged("lapse", after=policy.lapses_if_not_done_for.text()))
    if policy.way_back is not None:
        found.append(not_judged("way-back", runs=str(policy.way_back.runs)))
    return tuple(found)


Results = Sequence[AttemptResult | ObservationResult]


def _said(code: str, line: object | None) -> Finding:
    return fails(code) if line is None else holds(code)


def _signer(case: Case) -> Finding:
    if case.signer == case.learner:
        return fails("signer-differs", learner=case.learner)
    return holds("signer-differs", signer=case.signer, learner=case.learner)


def _learner(case: Case, evidence: Results) -> Finding:
    others = sorted({each.learner for each in evidence} - {case.learner})
    if others:
        return fails("learner-same", learner=case.learner, others=", ".join(others))
    return holds("learner-same", learner=case.learner)


def _observers(case: Case, observations: Sequence[ObservationResult]) -> Finding:
    watched_self = any(case.learner in each.observers for each in observations)
    make = fails if watched_self else holds
    return make("observers-differ", learner=case.learner)


def _once(evidence: Results) -> Finding:
    digests = [each.digest for each in evidence]
    twice = len(digests) - len(set(digests))
    if twice:
        return fails("evidence-once", reason="same-file", count=str(twice))
    seen = [each for each in evidence if isinstance(each, ObservationResult)]
    same = sorted(
        {
            f"{one.procedure} {one.date.isoformat()} {max(one.start, other.start)}"
            for one, other in combinations(seen, 2)
            if _at_one_time(one, other)
        }
    )
    if same:
        return fails("evidence-once", reason="same-run", runs=", ".join(same))
    return holds("evidence-once")


def _at_one_time(one: ObservationResult, other: ObservationResult) -> bool:
    """Whether two sheets are of one run: nobody does one procedure twice at the same time."""
    if (one.learner, one.procedure, one.date) != (other.learner, other.procedure, other.date):
        return False
    first, second = sorted((one, other), key=lambda each: each.start)
    # An end before the start is after midnight: the run lasted for the rest of the day.
    until = first.end if first.end >= first.start else "24:00" if first.end else first.start
    return second.start <= first.start or second.start < until


def _not_later(case: Case, evidence: Results) -> Finding:
    latest = max((each.date for each in evidence), default=case.on)
    days = {"latest": latest.isoformat(), "on": case.on.isoformat()}
    make = fails if latest > case.on else holds
    return make("evidence-not-later", **days)


def _current(
    case: Case, attempts: Sequence[AttemptResult], observations: Sequence[ObservationResult]
) -> Finding:
    """Attempts are of this edition; observed procedures mean what they meant."""
    old = sorted({each.edition for each in attempts if each.edition != case.edition})
    if old:
        return fails(
            "evidence-current", reason="attempt", editions=", ".join(old), edition=case.edition
        )
    changed = sorted({each.procedure for each in observations if not each.current})
    if changed:
        return fails("evidence-current", reason="procedure", procedures=", ".join(changed))
    return holds("evidence-current", edition=case.edition)


def _knowledge(case: Case, attempts: Sequence[AttemptResult]) -> Iterator[Finding]:
    need = case.policy.knowledge
    if need is None:
        return
    mine = [each for each in attempts if each.assessment == need.assessment]
    passed = [each for each in mine if each.passed]
    data = {"assessment": need.assessment}
    if not mine:
        yield fails("knowledge-passed", reason="no-attempt", **data)
    elif not passed:
        best = max(mine, key=lambda each: each.points)
        yield fails(
            "knowledge-passed",
            reason=_why_failed(best),
            points=str(best.points),
            needed=str(best.needed),
            **data,
        )
    else:
        best = max(passed, key=lambda each: each.points)
        yield holds("knowledge-passed", points=str(best.points), needed=str(best.needed), **data)
    if need.not_older_than is not None:
        dates = [each.date for each in passed or mine]
        yield _recent("knowledge-recent", dates, 1, need.not_older_than, case.on, data)
    if case.attempts_allowed is not None:
        used = {"used": str(len(mine)), "allowed": str(case.attempts_allowed), **data}
        make = fails if len(mine) > case.attempts_allowed else holds
        yield make("attempts-allowed", **used)
    yield not_judged("attempts-elsewhere", **data)


def _why_failed(attempt: AttemptResult) -> str:
    if attempt.unsafe_chosen:
        return "unsafe-chosen"
    if attempt.critical_missed:
        return "critical-missed"
    return "too-few-points"


def _practice(
    case: Case,
    need: PracticeNeed,
    procedure: str,
    observations: Sequence[ObservationResult],
) -> Iterator[Finding]:
    counting = [each for each in observations if each.procedure == procedure and each.counts]
    runs = counting
    if need.not_older_than is not None:
        try:
            first = day_before(case.on, need.not_older_than)
        except NotADurationError:
            first = date.max
        recent = [each for each in counting if each.date >= first]
        # Runs in date are what is judged, unless age alone leaves too few of them: then that
        # line fails, and the others say what they would say without it.
        if len(recent) >= min(need.runs, len(counting)):
            runs = recent
    asked: tuple[tuple[str, int, Callable[[], int]], ...] = (
        ("practice-runs", need.runs, lambda: len(runs)),
        ("practice-real", need.of_which_real, lambda: sum(r.setting == "real" for r in runs)),
        (
            "practice-observers",
            need.by_observers,
            lambda: len({each for r in runs for each in r.observers}),
        ),
        ("practice-days", need.on_days, lambda: len({r.date for r in runs})),
    )
    for code, wanted, count in asked:
        have = count()
        make = holds if have >= wanted else fails
        yield make(code, procedure=procedure, have=str(have), wanted=str(wanted))
    if need.not_older_than is not None:
        dates = [each.date for each in counting]
        yield _recent(
            "practice-recent",
            dates,
            min(need.runs, len(counting)),
            need.not_older_than,
            case.on,
            {"procedure": procedure},
        )


def _recent(
    code: str, dates: Sequence[date], wanted: int, limit: Quantity, on: date, data: dict[str, str]
) -> Finding:
    """Whether enough of the days are not older than a limit on the day of signing."""
    told = {"limit": limit.text(), "on": on.isoformat(), **data}
    try:
        first = day_before(on, limit)
    except NotADurationError:
        return fails(code, reason="no-time", **told)
    if not dates:
        return unknown(code, reason="nothing-to-judge", **told)
    kept = [each for each in dates if each >= first]
    told |= {"since": first.isoformat(), "have": str(len(kept)), "of": str(len(dates))}
    if len(kept) < wanted:
        return fails(code, reason="too-old", oldest=min(dates).isoformat(), **told)
    return holds(code, **told)


def stands_in_the_way(findings: Sequence[Finding]) -> tuple[Finding, ...]:
    """Return the findings that keep a record from being signed."""
    return tuple(each for each in findings if each.verdict is Verdict.FAILS)


def can_be_overridden(finding: Finding) -> bool:
    """Return whether a supervisor may sign in spite of it, giving a reason."""
    return finding.code in POLICY_LINES
