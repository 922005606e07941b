"""The rule blueprint-unfillable."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.item_texts import ReadItem, by_topic
from basinside.check.rule import Finding, rule
from basinside.marking import quotas
from basinside.model.quiz import Assessment
from basinside.model.words import THINKING
from basinside.problem import Level


@rule(level=Level.STOP, of_all=True)
def check_blueprint_unfillable(checked: Checked) -> Iterator[Finding]:
    """The pool can fill every form of an assessment as its blueprint asks.

    Each topic has items for all forms without one coming twice; the shares make 100 %; and the
    hardest items of each topic make up the shares of `at_least`.
    Why: it would come out when a form is sealed, the evening before it is needed.
    Bad: `items: 20`, `forms: 2` and `steam: 15 %` while the pool has five items about steam.
    Good: a sixth item, or one form.
    Source: van der Linden, Linear models for optimal test design, 2005 (forms without overlap).
    """
    pool = by_topic(checked.items, "assessment")
    for name, assessment in checked.content.assessments.items():
        shares = assessment.blueprint.topics
        total = sum(shares.values())
        place = assessment.blueprint.place
        if total != 100:
            said = f"the shares of the topics of {name} make {total} %"
            yield Finding(place.at("topics"), said, "Let them make 100 %.", (assessment.place,))
        wanted = quotas(shares, assessment.items)
        for topic, number in wanted.items():
            needed, have = number * assessment.forms, len(pool.get(topic, ()))
            if have < needed:
                yield Finding(
                    place.at("topics", topic),
                    f"{name} needs {_counted(needed, 'item')} of {topic} for"
                    f" {_counted(assessment.forms, 'form')}; the pool has {have}",
                    "Write more, or ask for fewer.",
                    (assessment.place,),
                )
        yield from _thinking(name, assessment, wanted, pool)


def _counted(number: int, what: str) -> str:
    return f"1 {what}" if number == 1 else f"{number} {what}s"


def _thinking(
    name: str, assessment: Assessment, wanted: dict[str, int], pool: dict[str, list[ReadItem]]
) -> Iterator[Finding]:
    for thinking, share in assessment.blueprint.at_least.items():
        floor = THINKING.index(thinking)
        most = sum(
            min(number, sum(THINKING.index(read.item.thinking) >= floor for read in have))
            for topic, number in wanted.items()
            if (have := pool.get(topic))
        )
        if most * 100 < share * sum(wanted.values()):
            yield Finding(
                assessment.blueprint.place.at("at_least", thinking),
                f"{name} asks that {share} % of {sum(wanted.values())} items make people"
                f" {thinking} or more; its topics have {most}",
                "Write more of them, or ask for a smaller share.",
                (assessment.place,),
            )
