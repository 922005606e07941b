"""Each line of a policy that evidence decides fails alone; the others are left open."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from typing import Any

import pytest

from basinside.certify.policy import (
    POLICY_LINES,
    Case,
    can_be_overridden,
    judge_policy,
    stands_in_the_way,
)
from basinside.model.derived import Policy
from basinside.model.finding import Finding, Verdict
from basinside.model.handbook import KnowledgeNeed, PracticeNeed, WayBack
from basinside.model.results import AttemptResult, ObservationResult, WhyNot
from basinside.problem import Place
from basinside.quantity import parse_quantity
from basinside.render.findings import finding_line, finding_sentence
from tests.score.made import attempt, scored

ON = date(2026, 11, 20)
PLACE = Place("content/handbook.yaml")


def entry(kind: Any, **fields: Any) -> Any:
    """An authored entry out of typed values."""
    return kind.model_construct(place=PLACE, **fields)


POLICY = Policy(
    knowledge=entry(KnowledgeNeed, assessment="core", not_older_than=parse_quantity("90 days")),
    practice=entry(
        PracticeNeed,
        runs=3,
        of_which_real=2,
        by_observers=2,
        on_days=2,
        not_older_than=parse_quantity("90 days"),
    ),
    lasts=parse_quantity("12 months"),
    lapses_if_not_done_for=parse_quantity("6 months"),
    way_back=entry(WayBack, runs=1, of_which_real=1),
)
CASE = Case(
    policy=POLICY,
    procedures=("boil", "soak"),
    edition="2026.2",
    learner="M-12",
    signer="S-01",
    on=ON,
    attempts_allowed=1,
)


def run(procedure: str, number: int, **changes: Any) -> ObservationResult:
    """The usual three runs of a procedure: two real, two observers, three days."""
    made = ObservationResult(
        digest=f"{procedure} {number}",
        procedure=procedure,
        edition="2026.2",
        learner="M-12",
        observers=("S-01" if number == 0 else "S-02",),
        date=date(2026, 11, 4 + number),
        setting="simulated" if number == 2 else "real",
        announced=True,
        current=True,
        why_not=(),
        start=f"{8 + number:02}:00",
    )
    return replace(made, **changes)


def runs(first: Sequence[dict[str, Any]] = ({}, {}, {})) -> list[ObservationResult]:
    """Three runs of each procedure, those of the first one changed as given."""
    return [
        *(run("boil", number, **changes) for number, changes in enumerate(first)),
        *(run("soak", number) for number in range(3)),
    ]


PASSED = scored(attempt())


def judged(
    attempts: Sequence[AttemptResult] = (PASSED,),
    observations: Sequence[ObservationResult] | None = None,
    **changes: Any,
) -> tuple[Finding, ...]:
    return judge_policy(
        replace(CASE, **changes), attempts, runs() if observations is None else observations
    )


def failing(findings: Sequence[Finding]) -> list[tuple[str, str]]:
    return [
        (each.code, each.data.get("procedure", ""))
        for each in findings
        if each.verdict is Verdict.FAILS
    ]


def test_good_evidence_leaves_nothing_in_the_way() -> None:
    findings = judged()
    assert stands_in_the_way(findings) == ()
    assert {each.code for each in findings} >= set(POLICY_LINES)


NOT_COUNTING = (WhyNot(reason="help-needed"),)
OLD: dict[str, Any] = {"date": date(2026, 8, 21)}
LAST_GOOD: dict[str, Any] = {"date": date(2026, 8, 22)}


@pytest.mark.parametrize(
    ("code", "attempts", "first"),
    [
        ("knowledge-passed", [scored(attempt("BBBBB"))], [{}, {}, {}]),
        ("knowledge-passed", [], [{}, {}, {}]),
        ("knowledge-recent", [replace(PASSED, **OLD)], [{}, {}, {}]),
        (
            "attempts-allowed",
            [PASSED, replace(PASSED, digest="second", passed=False)],
            [{}, {}, {}],
        ),
        ("practice-runs", [PASSED], [{}, {}, {"why_not": NOT_COUNTING}]),
        ("practice-runs", [PASSED], [{}, {}]),
        ("practice-real", [PASSED], [{}, {"setting": "simulated"}, {}]),
        ("practice-observers", [PASSED], [{"observers": ("S-02",)}, {}, {}]),
        ("practice-days", [PASSED], [{"date": ON}, {"date": ON}, {"date": ON}]),
        ("practice-recent", [PASSED], [OLD, {}, {}]),
    ],
)
def test_one_line_fails_alone_and_says_so(
    code: str, attempts: list[AttemptResult], first: list[dict[str, Any]]
) -> None:
    findings = judged(attempts, runs(first))
    procedure = "boil" if code.startswith("practice") else ""
    assert failing(findings) == [(code, procedure)]
    said = finding_sentence(stands_in_the_way(findings)[0])
    line = {"knowledge": "Knowledge", "attempts": "Attempts", "practice": "Practice, boil"}
    assert said.startswith(line[code.partition("-")[0]])
    assert can_be_overridden(stands_in_the_way(findings)[0])


def test_ninety_days_old_on_the_day_of_signing_still_counts() -> None:
    assert failing(judged([replace(PASSED, **LAST_GOOD)], runs([LAST_GOOD, {}, {}]))) == []


def test_enough_younger_runs_make_an_old_one_harmless_and_useless() -> None:
    four = [run("boil", 3, **OLD, digest="old"), *runs()]
    assert failing(judged(observations=four)) == []
    real_only_when_old = [
        run("boil", 3, **OLD, digest="old"),
        *runs([{}, {"setting": "simulated"}, {}]),
    ]
    assert failing(judged(observations=real_only_when_old)) == [("practice-real", "boil")]


SAME_DAY: dict[str, Any] = {"date": date(2026, 11, 4), "start": "09:10"}


@pytest.mark.parametrize(
    ("one", "other", "same"),
    [
        ({}, {"observers": ("S-02",), "digest": "other"}, True),
        ({"end": "09:50"}, {"start": "09:49"}, True),
        ({"end": "09:50"}, {"start": "09:50"}, False),
        ({"start": "09:49"}, {"end": "09:50"}, True),
        ({"start": "23:50", "end": "00:20"}, {"start": "23:55"}, True),
        ({}, {"start": "09:11"}, False),
        ({}, {"date": date(2026, 11, 9)}, False),
    ],
)
def test_one_run_on_two_sheets_is_one_run(
    one: dict[str, Any], other: dict[str, Any], same: bool
) -> None:
    found = judged(
        observations=[
            run("boil", 1, **{**SAME_DAY, **one}),
            run("boil", 2, **{**SAME_DAY, **other}),
        ]
    )
    once = next(each for each in found if each.code == "evidence-once")
    assert (once.verdict is Verdict.FAILS) == same
    if same:
        assert once.data["reason"] == "same-run"
        assert "share one sheet" in finding_sentence(once)


def test_one_attempt_given_twice_is_one_attempt() -> None:
    found = judged([PASSED, PASSED], attempts_allowed=2)
    assert failing(found) == [("evidence-once", "")]
    assert finding_sentence(stands_in_the_way(found)[0]).endswith("1 too many.")


def test_two_procedures_may_be_done_at_one_time() -> None:
    both = [run("boil", 1, **SAME_DAY), run("soak", 1, **SAME_DAY)]
    assert ("evidence-once", "") not in failing(judged(observations=both))


def test_a_second_observer_counts_as_one() -> None:
    both = runs([{"observers": ("S-02", "S-03")}, {}, {}])
    assert failing(judged(observations=both)) == []


@pytest.mark.parametrize(
    ("code", "changes", "attempts", "observations"),
    [
        ("signer-differs", {"signer": "M-12"}, [PASSED], None),
        ("learner-same", {}, [replace(PASSED, learner="M-15")], None),
        ("learner-same", {}, [PASSED], runs([{"learner": "M-15"}, {}, {}])),
        ("observers-differ", {}, [PASSED], runs([{"observers": ("S-01", "M-12")}, {}, {}])),
        ("evidence-once", {}, [PASSED], [*runs(), run("boil", 0)]),
        ("evidence-not-later", {}, [PASSED], runs([{"date": date(2026, 11, 21)}, {}, {}])),
        ("evidence-current", {}, [replace(PASSED, edition="2026.1")], None),
        ("evidence-current", {}, [PASSED], [*runs(), run("soak", 4, current=False)]),
        ("lasts", {"policy": replace(POLICY, lasts=None)}, [PASSED], None),
        ("practice-asked", {"policy": replace(POLICY, practice=None)}, [PASSED], None),
    ],
)
def test_what_no_reason_can_override(
    code: str, changes: dict[str, Any], attempts: Any, observations: Any
) -> None:
    findings = judged(attempts, observations, **changes)
    assert [each for each, _ in failing(findings)] == [code]
    assert not can_be_overridden(stands_in_the_way(findings)[0])
    assert finding_sentence(stands_in_the_way(findings)[0])


def test_what_needs_a_register_is_not_judged_here() -> None:
    left_open = [each for each in judged() if each.verdict is Verdict.NOT_JUDGED]
    assert [each.code for each in left_open] == [
        "attempts-elsewhere",
        "observers-entitled",
        "lapse",
        "way-back",
    ]
    assert all(finding_line(each).startswith("not judged here") for each in left_open)


def test_a_limit_that_is_no_time_holds_for_nobody() -> None:
    limit = parse_quantity("20 °C")
    strange = entry(
        PracticeNeed, runs=3, of_which_real=2, by_observers=2, on_days=2, not_older_than=limit
    )
    findings = judged(policy=replace(POLICY, practice=strange))
    assert ("practice-recent", "boil") in failing(findings)


def test_an_attempt_at_another_assessment_is_no_knowledge() -> None:
    findings = judged([replace(PASSED, assessment="advanced")])
    assert failing(findings) == [("knowledge-passed", "")]
