"""What a record's evidence digests cover: the answers of an attempt, the lines of an observation.

DIGESTS: names, times taken, changes of mind, comments and the end are left out, so that a file
and a slip of the same answers agree.
"""

from __future__ import annotations

from basinside.canonical import digest
from basinside.marking import plan_answer
from basinside.model.attempt import Attempt
from basinside.model.observed import Observation


def answers_digest(attempt: Attempt) -> str:
    """Return ``answers-v1`` of an attempt: its form, who, when, and the answers in form order.

    Raises ``ValueError`` for a self-test: it has no form, and is no evidence.
    """
    if attempt.form_digest is None:
        raise ValueError("a self-test is no evidence")
    return digest(
        "answers",
        {
            "form_digest": attempt.form_digest,
            "staff_code": attempt.staff_code,
            "date": attempt.date,
            "answers": [plan_answer(each) for each in attempt.items],
        },
    )


def observation_digest(observation: Observation) -> str:
    """Return ``observation-v1`` of an observation."""
    return digest(
        "observation",
        {
            "handbook": observation.handbook,
            "edition": observation.edition,
            "procedure": observation.procedure,
            **({"route": observation.route} if observation.route else {}),
            "learner_staff_code": observation.learner_staff_code,
            "observer_staff_code": observation.observer_staff_code,
            "date": observation.date,
            "start": observation.start,
            "setting": observation.setting,
            "announced": observation.announced,
            "help": observation.help,
            "lines": [
                {"meaning": each.meaning, "verdict": each.verdict} for each in observation.lines
            ],
        },
    )
