"""The rule review-overdue."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.WARN, dated=True)
def check_review_overdue(checked: Checked) -> Iterator[Finding]:
    """The handbook is looked at again by the day it names.

    Why: guidance, products and people change; a handbook that nobody looks at grows wrong.
    This is judged only when the day is given: `basinside check --today 2026-11-20`.
    Bad: `review_by: 2026-10-01` on a later day.
    Good: the handbook was read again and says `review_by: 2027-10-01`.
    Source: common practice.
    """
    handbook = checked.content.handbook
    if handbook and checked.today and handbook.review_by < checked.today:
        yield Finding(
            handbook.place.at("review_by"),
            f"the handbook was to be looked at again by {handbook.review_by}",
            "Read it again, then write the next day.",
        )
