"""The rule attempts-exceed-forms."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.STOP)
def check_attempts_exceed_forms(checked: Checked) -> Iterator[Finding]:
    """An assessment has a form for each attempt that it allows.

    Why: once somebody knows why an answer was wrong the form is spent for that person. Who tries
    the same form again shows memory; of people who know 70 % a test of 10 items with a cut of 8
    passes 38 in 100 at once, and 76 in 100 within three tries.
    Bad: `forms: 1` and `attempts: 2`
    Good: `forms: 2` and `attempts: 2`
    Source: Millman, Passing scores and test lengths for domain-referenced measures, 1973.
    """
    for name, assessment in checked.content.assessments.items():
        if assessment.attempts > assessment.forms:
            yield Finding(
                assessment.place.at("attempts"),
                f"{name} allows {assessment.attempts} attempts and has {assessment.forms}"
                f" form{'' if assessment.forms == 1 else 's'}",
                "Ask for as many forms, or allow fewer attempts.",
                (assessment.place,),
            )
