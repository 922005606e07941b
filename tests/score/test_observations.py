"""A run counts only when every line is met, nobody helped, and nothing changed since."""

from typing import Any

import pytest

from basinside.model.observed import Observation
from basinside.model.results import ObservationResult
from basinside.score.observations import score_observation

SCOPE = "scope-v1:" + "S" * 43
LINES = {"wash": "step-v1:" + "W" * 43, "label-read": "line-v1:" + "L" * 43}


def scored(verdicts: dict[str, str] | None = None, **changes: Any) -> ObservationResult:
    given = {"wash": "met", "label-read": "met", **(verdicts or {})}
    plain: dict[str, Any] = {
        "handbook": "highfell",
        "edition": "2026.2",
        "procedure": "boil",
        "scope_digest": SCOPE,
        "instrument": "bag-mask",
        "route": "boil",
        "learner_staff_code": "M-12",
        "observer_staff_code": "S-02",
        "date": "2026-11-09",
        "start": "09:10",
        "setting": "real",
        "announced": True,
        "help": False,
        "lines": [
            {"line": line, "meaning": LINES.get(line, LINES["wash"]), "verdict": verdict}
            for line, verdict in given.items()
            if verdict
        ],
        **changes,
    }
    return score_observation(
        Observation.from_plain(plain), LINES, scope_digest=SCOPE, observation_digest="d"
    )


def reasons(result: ObservationResult) -> list[tuple[str, str]]:
    return [(each.reason, each.line) for each in result.why_not]


def test_every_line_met_counts() -> None:
    result = scored()
    assert result.counts
    assert result.current
    assert result.observers == ("S-02",)


@pytest.mark.parametrize("verdict", ["met with help", "not met", "not seen"])
def test_any_other_verdict_does_not(verdict: str) -> None:
    result = scored({"wash": verdict})
    assert reasons(result) == [("line-not-met", "wash")]
    assert result.why_not[0].verdict == verdict


def test_a_line_without_a_verdict_does_not() -> None:
    assert reasons(scored({"wash": ""})) == [("line-missing", "wash")]


def test_a_line_that_is_not_on_the_list_does_not() -> None:
    assert reasons(scored({"extra": "met"})) == [("line-unknown", "extra")]


def test_help_does_not() -> None:
    assert reasons(scored(help=True)) == [("help-needed", "")]


def test_a_procedure_that_changed_since_does_not() -> None:
    result = scored(scope_digest="scope-v1:" + "T" * 43)
    assert reasons(result) == [("scope-changed", "")]
    assert not result.current


def test_a_line_that_means_something_else_by_now_does_not() -> None:
    lines = [
        {"line": "wash", "meaning": "step-v1:" + "X" * 43, "verdict": "met"},
        {"line": "label-read", "meaning": LINES["label-read"], "verdict": "met"},
    ]
    assert reasons(scored(lines=lines)) == [("line-outdated", "wash")]


@pytest.mark.parametrize(("verdict", "counts"), [("met", True), ("not seen", False)])
def test_a_second_observer_must_have_seen_the_same(verdict: str, counts: bool) -> None:
    lines = [
        {"line": "wash", "meaning": LINES["wash"], "verdict": verdict},
        {"line": "label-read", "meaning": LINES["label-read"], "verdict": "met"},
    ]
    result = scored(second_observer={"observer_staff_code": "S-03", "lines": lines})
    assert result.counts is counts
    assert result.observers == ("S-02", "S-03")
