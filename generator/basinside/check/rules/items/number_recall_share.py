"""The rule number-recall-share."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.item_texts import ReadItem
from basinside.check.option_numbers import numbers_in
from basinside.check.rule import Finding, rule
from basinside.model.item_kinds import NumberFrom
from basinside.model.procedure import Step
from basinside.model.prose import references
from basinside.problem import Level

_MOST_PERCENT: Final = 25
_FEWEST: Final = 2
_CARDS: Final = frozenset({"dilution-card", "boiling-and-gauge-card"})


@rule(level=Level.WARN)
def check_number_recall_share(checked: Checked) -> Iterator[Finding]:
    """At most a quarter of a topic's items ask for a number that hangs on the wall.

    A number hangs on the wall when a step of a posted wall chart has it, or when it is worked out
    and the dilution card or the card for boiling and gauge is posted. An item asks for it when its
    right option is nothing but that number, or when it is the number to be written, not a multiple
    of it. One such item in a topic is never too many.
    Why: what hangs over the sink is read there. What to do when it does not fit is not.
    Bad: three of eight items about boiling have right options such as `"{{ boil.hold }}"`.
    Good: an item in which somebody drops in one more part, and the time begins anew.
    Source: common practice.
    """
    wall = _on_the_wall(checked)
    if not wall:
        return
    asked: dict[tuple[str, str], int] = {}
    recall: dict[tuple[str, str], list[ReadItem]] = {}
    for read in checked.items:
        group = read.pool, read.topic
        asked[group] = asked.get(group, 0) + 1
        if not wall.isdisjoint(_numbers_asked(checked, read)):
            recall.setdefault(group, []).append(read)
    for (pool, topic), found in recall.items():
        number = asked[pool, topic]
        if len(found) >= _FEWEST and 100 * len(found) > _MOST_PERCENT * number:
            yield Finding(
                found[0].item.place,
                f"{len(found)} of the {number} {pool} items of {topic} ask for a number that hangs"
                " on the wall",
                "Ask what to do where the number alone does not help.",
            )


def _on_the_wall(checked: Checked) -> frozenset[str]:
    content = checked.content
    posted = content.handbook.posted if content.handbook else ()
    found: set[str] = set()
    for each in posted:
        if each.print in _CARDS:
            found.update(name for name, figure in content.figures.items() if figure.worked_out)
        procedure = content.procedures.get(each.of or "") if each.print == "wall-chart" else None
        for _, step in procedure.steps if procedure else ():
            found.update(_of_step(step))
    return frozenset(found)


def _of_step(step: Step) -> Iterator[str]:
    for reference in (step.hold, step.wait, step.strength, step.temperature):
        if reference is not None:
            yield reference.figure
    for text in (step.do, step.wall):
        if text is not None:
            yield from (each.figure for each in references(text))


def _numbers_asked(checked: Checked, read: ReadItem) -> Iterator[str]:
    number = read.item.number
    if number is not None and isinstance(number.right, NumberFrom) and number.right.times == 1:
        yield number.right.figure
    for each in read.right:
        found = references(each.option.text)
        if found and numbers_in(each.text, checked.item_words):
            yield from (reference.figure for reference in found)
