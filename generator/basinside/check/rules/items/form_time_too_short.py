"""The rule form-time-too-short."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from basinside.check.checked import Checked
from basinside.check.item_texts import ReadItem, by_topic
from basinside.check.rule import Finding, rule
from basinside.marking import quotas
from basinside.problem import Level

_WORDS_A_MINUTE: Final = 130
"""Somebody who reads slowly. Adults read about 238 words a minute in their own language
(Brysbaert, How many words do we read per minute?, 2019, from memory); little more than half of
that is our own choice, for people who read in a second language."""
_SECONDS_AN_ITEM: Final = 20
"""To decide and to mark the answer (our own)."""


@rule(level=Level.WARN)
def check_form_time_too_short(checked: Checked) -> Iterator[Finding]:
    """The minutes of an assessment are enough to read its items slowly and to answer them.

    Counted: the mean length of each topic's items times how many are drawn, at 130 words a minute,
    and 20 seconds for each answer.
    Why: an assessment asks what people know, not how fast they read.
    Bad: 20 items of 70 words each and `minutes: 10`
    Good: `minutes: 20`, or none: no time is kept.
    Source: Brysbaert, How many words do we read per minute?, 2019 (from memory); the margin is our
    own.
    """
    pool = by_topic(checked.items, "assessment")
    for name, assessment in checked.content.assessments.items():
        if assessment.minutes is None:
            continue
        wanted = quotas(assessment.blueprint.topics, assessment.items)
        words = round(sum(number * _mean(pool.get(topic, ())) for topic, number in wanted.items()))
        seconds = words * 60 / _WORDS_A_MINUTE + assessment.items * _SECONDS_AN_ITEM
        needed = -int(-seconds // 60)
        if assessment.minutes < needed:
            yield Finding(
                assessment.place.at("minutes"),
                f"{name} gives {assessment.minutes} min for {assessment.items} items with about"
                f" {words} words; a slow reader needs {needed} min",
                "Give more time, or ask less.",
                (assessment.place,),
            )


def _mean(items: Sequence[ReadItem]) -> float:
    if not items:
        return 0.0
    return sum(map(_words, items)) / len(items)


def _words(read: ReadItem) -> int:
    own = len(read.situation_words) + len(read.stem_words)
    return own + sum(len(each.words) for each in read.options)
