"""The rule biological-indicator-schedule."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.model.at_hand import route_not_had
from basinside.problem import Level


@rule(level=Level.WARN)
def check_biological_indicator_schedule(checked: Checked) -> Iterator[Finding]:
    """Where heat sterilizes, spores are tested by a schedule, or it stands there why not.

    Why: only a spore test shows that a vessel kills what is hardest to kill. About 7,000 patients
    of a dental surgery in Oklahoma were told of a sterilizer that nobody had tested.
    Where no spore tests can be had, the clinic says what it does instead, since when, and whom it
    asked for them.
    Bad: nothing about spore tests.
    Good: `spore_test: {every: {figure: spore-test.every}}`, or `spore_test: {not_available:
    {instead: ..., since: 2026-03-01, asked_for: ...}}`.
    Source: CDC, Guideline for disinfection and sterilization in healthcare facilities, 2008 (at
    least weekly); paper 2450 of the CSTE conference, 2013.
    """
    handbook = checked.content.handbook
    users = [
        each.name
        for each in checked.sound
        if each.route.kind in {"steam", "dry heat"}
        if route_not_had(checked.content, each.whole) is None
    ]
    if handbook is None or not users:
        return
    test = handbook.clinic.spore_test
    if test is None or (test.every is None and test.not_available is None):
        yield Finding(
            (test or handbook.clinic).place,
            f"{users[0]} sterilizes by heat, and nothing says how often spores are tested or what"
            " is done without",
            "Write “spore_test:” with “every:” or with “not_available:”.",
        )
    elif test.every is not None and test.not_available is not None:
        message = "spore tests are done by a schedule and are not available: one of the two"
        yield Finding(test.place, message, "Delete the one that is not so.")
