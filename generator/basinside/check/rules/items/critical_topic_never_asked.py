"""The rule critical-topic-never-asked."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.item_texts import by_topic
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.STOP, of_all=True)
def check_critical_topic_never_asked(checked: Checked) -> Iterator[Finding]:
    """A topic whose practice has critical items has one in the assessment too.

    Asked for each assessment that is passed only with all critical items right, and for each topic
    of its blueprint.
    Why: “all critical items right” promises that nobody passes who gets a grave thing wrong. In a
    topic without a critical item the promise is empty.
    Bad: six critical practice items about steam, and no `critical: yes` in the pool that forms are
    drawn from.
    Good: at least one item with `critical: yes` there.
    Source: Yudkowsky, Tumuluru, Casey, Herlich and Ledonne, A patient safety approach to setting
    pass/fail standards for basic procedural skills checklists, 2014.
    """
    practised, asked = by_topic(checked.items, "practice"), by_topic(checked.items, "assessment")
    for name, assessment in checked.content.assessments.items():
        for topic in assessment.blueprint.topics:
            grave = sum(read.item.critical for read in practised.get(topic, ()))
            pool = asked.get(topic, ())
            if grave and pool and not any(read.item.critical for read in pool):
                yield Finding(
                    assessment.blueprint.place.at("topics", topic),
                    f"{topic} has {grave} critical item{'' if grave == 1 else 's'} in practice, and"
                    f" {name} can ask none",
                    "Write “critical: yes” at an assessment item of it, or write one.",
                    (assessment.place,),
                )
