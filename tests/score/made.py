"""A small form with its keys, and answers to it."""

from typing import Any

from basinside.certify.evidence import answers_digest
from basinside.model.attempt import Answer, Attempt
from basinside.model.results import AttemptResult
from basinside.score.attempts import score_attempt

DIGEST = "form-v1:" + "F" * 43
ITEMS = ("first", "second", "third", "fourth", "fifth")
HEAD = {
    "handbook": "highfell",
    "edition": "2026.2",
    "assessment": "core",
    "version": 1,
    "form": "A",
}


def plan(item: str, right: list[int], *, unsafe: int | None = None, critical: bool = False) -> Any:
    return {
        "item": item,
        "critical": critical,
        "worth": 60,
        "options": 3,
        "points": {"kind": "all-or-none"},
        "pass_all": [{"has": n} if n in right else {"hasnt": n} for n in range(3)],
        "fail_any": [] if unsafe is None else [{"has": unsafe}],
    }


def form() -> dict[str, Any]:
    return {
        **HEAD,
        "items": [
            {
                "item": item,
                "kind": "choice",
                "topic": "cleaning" if n < 3 else "storage",
                "stem": f"What of {item}?",
                "options": [f"{item} {letter}" for letter in "ABC"],
            }
            for n, item in enumerate(ITEMS)
        ],
    }


def keys(percent: int = 80) -> dict[str, Any]:
    plans = [plan(item, [0]) for item in ITEMS]
    plans[1] = plan("second", [0], unsafe=2)
    plans[2] = plan("third", [0], critical=True)
    return {**HEAD, "pass_percent": percent, "items": [{"plan": each} for each in plans]}


def attempt(chosen: str = "AAAAA", **changes: Any) -> Attempt:
    """An attempt by letters; ``-`` leaves an item open."""
    items = [
        Answer(item=item, chosen=None if letter == "-" else ("ABC".index(letter),)).plain()
        for item, letter in zip(ITEMS, chosen, strict=True)
    ]
    plain = {
        "handbook": "highfell",
        "edition": "2026.2",
        "kind": "assessment",
        "id": "core",
        "form": "A",
        "form_digest": DIGEST,
        "staff_code": "M-12",
        "date": "2026-11-16",
        "language": "en",
        "items": items,
        **changes,
    }
    return Attempt.from_plain({name: value for name, value in plain.items() if value is not None})


def scored(given: Attempt, percent: int = 80) -> AttemptResult:
    digest = answers_digest(given) if given.form_digest else ""
    return score_attempt(given, form(), keys(percent), form_digest=DIGEST, answers_digest=digest)
