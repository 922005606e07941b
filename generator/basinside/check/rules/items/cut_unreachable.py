"""The rule cut-unreachable."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.item_texts import by_topic
from basinside.check.rule import Finding, rule
from basinside.marking import items_needed, quotas
from basinside.problem import Level


@rule(level=Level.STOP)
def check_cut_unreachable(checked: Checked) -> Iterator[Finding]:
    """The cut of an assessment can be reached, and can be missed.

    The items needed are the percentage of all items, rounded up; a form has at most what the
    blueprint draws from the pool. `critical` is `all`, which is what the program marks.
    Why: a cut of nought passes whoever hands in a sheet. One above what a form holds fails
    everybody, and is noticed on the day.
    Bad: `pass: {percent: 0}`
    Good: `pass: {percent: 80, critical: all}`
    Source: common practice.
    """
    pool = by_topic(checked.items, "assessment")
    for name, assessment in checked.content.assessments.items():
        cut = assessment.pass_
        needed = items_needed(cut.percent, assessment.items)
        wanted = quotas(assessment.blueprint.topics, assessment.items)
        drawn = sum(min(number, len(pool.get(topic, ()))) for topic, number in wanted.items())
        if needed == 0:
            said = f"{name} is passed with no right answer"
            yield Finding(cut.place.at("percent"), said, "Write a percentage.", (assessment.place,))
        elif needed > drawn:
            yield Finding(
                cut.place.at("percent"),
                f"{name} asks for {needed} right items, and its blueprint draws {drawn}",
                "Fill the pool, or ask for a lower percentage.",
                (assessment.place,),
            )
        if cut.critical != "all":
            yield Finding(
                cut.place.at("critical"),
                f"{name} says “critical: {cut.critical}”; every critical item counts",
                "Write “critical: all”.",
                (assessment.place,),
            )
