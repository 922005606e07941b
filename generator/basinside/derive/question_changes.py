"""What changed in questions: their words, their keys, what keys rest on, and what those became.

Questions stand in no closed edition (a key never leaves the author's files), so that they are
compared only where both sides have them; what a changed value or step means for the key of a
question can be told from either side.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Any, Final

from pydantic import BaseModel

from basinside.derive.edition_evidence import pairs_of
from basinside.model.content import AskedItem, Content
from basinside.model.derived import Change
from basinside.model.entry import FigureRef
from basinside.model.prose import references

Questions = Mapping[str, Mapping[str, Any]]

_NO_WORDS: Final = frozenset({"place", "waive", "rests_on", "built_on", "about", "picture"})
"""Fields of a question that a reader never reads, or that are told on their own."""


def questions_of(content: Content) -> Questions:
    """Return each question as it counts for a comparison, by its id."""
    return {asked.item.item: _question(asked) for asked in content.items()}


def _question(asked: AskedItem) -> dict[str, Any]:
    item = asked.item
    rests = item.rests_on
    words = [asked.scenario.situation] if asked.scenario else []
    words += [text for _, text in _texts(item)]
    return {
        "pool": asked.pool,
        "topic": asked.topic,
        "words": words,
        "key": _key(asked),
        "rests_on": {
            "values": {name: value.base_text() for name, value in rests.values.items()},
            "steps": list(rests.steps),
            "orders": [list(order) for order in rests.orders],
        }
        if rests
        else {},
        "values": sorted({*_figures(asked), *(rests.values if rests else ())}),
        "steps": sorted(
            {
                *(rests.steps if rests else ()),
                *(step for order in (rests.orders if rests else ()) for step in order),
                *(entry.step for entry in item.entries if entry.step),
            }
        ),
    }


def _key(asked: AskedItem) -> dict[str, Any]:
    """Return what makes an answer right."""
    item = asked.item
    number = item.number
    return {
        "options": {each.text: (each.is_right, each.unsafe) for each in item.options},
        "order": [entry.text for entry in item.entries],
        "pairs": {pair.left: pair.right for pair in item.pairs},
        "rest": (
            item.kind,
            item.critical,
            [(each.first, each.then) for each in item.matters],
            number.model_dump_json(include={"right", "accept", "unsafe"}) if number else "",
        ),
    }


def _key_changed(old: Mapping[str, Any], new: Mapping[str, Any]) -> bool:
    """Whether an answer that was right is so no more, and not only said in other words."""
    options, others = old["options"], new["options"]
    return (
        old["rest"] != new["rest"]
        or any(options[text] != others[text] for text in options if text in others)
        or _rights(options) != _rights(others)
        or [each for each in old["order"] if each in new["order"]]
        != [each for each in new["order"] if each in old["order"]]
        or any(
            right != new["pairs"][left] and right in new["pairs"].values()
            for left, right in old["pairs"].items()
            if left in new["pairs"]
        )
    )


def _rights(options: Mapping[str, tuple[bool, bool]]) -> int:
    return sum(right for right, _ in options.values())


def _texts(model: BaseModel) -> Iterator[tuple[str, str]]:
    """Yield each text that a reader meets, with its field."""
    for name in type(model).model_fields:
        if name not in _NO_WORDS:
            for value in _flat(getattr(model, name)):
                if isinstance(value, BaseModel):
                    yield from _texts(value)
                elif isinstance(value, str):
                    yield name, value


def _flat(value: Any) -> Iterator[Any]:
    if isinstance(value, tuple):
        for each in value:
            yield from _flat(each)
    else:
        yield value


def _figures(asked: AskedItem) -> Iterator[str]:
    situations = [asked.scenario.situation] if asked.scenario else []
    for text in (*situations, *(text for _, text in _texts(asked.item))):
        yield from (each.figure for each in references(text))
    number = asked.item.number
    for written in (number.right, *(each.number for each in number.mistakes)) if number else ():
        if isinstance(written, FigureRef):
            yield written.figure


def compare_questions(old: Questions | None, new: Questions | None) -> tuple[Change, ...]:
    """Return the questions that are new, gone or written otherwise, where both sides have them."""
    if old is None or new is None:
        return ()
    changes: list[Change] = []
    for name, before, after in pairs_of(old, new):
        if before is None:
            changes.append(Change(kind="item-new", id=name, member=after["pool"]))
        elif after is None:
            changes.append(Change(kind="item-gone", id=name, member=before["pool"]))
        else:
            pool = after["pool"]
            if _key_changed(before["key"], after["key"]):
                changes.append(Change(kind="item-key", id=name, member=pool))
            was, now = (
                _only(before["words"], after["words"]),
                _only(after["words"], before["words"]),
            )
            if was or now:
                changes.append(Change(kind="item-reworded", id=name, member=pool, old=was, new=now))
            if before["rests_on"] != after["rests_on"]:
                changes.append(Change(kind="item-rests-on", id=name, member=pool))
    return tuple(changes)


def _only(some: list[str], others: list[str]) -> list[str]:
    return [each for each in some if each not in others]


def questions_touched(questions: Questions | None, changes: Iterable[Change]) -> tuple[Change, ...]:
    """Return the questions that name a changed value, or whose key rests on a changed step."""
    values: dict[str, None] = {}
    steps: dict[str, None] = {}
    moved: dict[str, None] = {}
    for change in changes:
        if change.kind in {"value-changed", "value-gone"}:
            values[change.id] = None
        elif change.kind in {"step-changed", "step-gone"}:
            steps[change.id] = None
        elif change.kind in {"steps-moved", "procedure-gone"}:
            moved[change.id] = None
    out: list[Change] = []
    for name, each in (questions or {}).items():
        named = [value for value in values if value in each["values"]]
        on = [step for step in each["steps"] if step in steps or step.partition("/")[0] in moved]
        if named:
            out.append(Change(kind="item-values", id=name, member=each["pool"], new=named))
        if on:
            out.append(Change(kind="item-steps", id=name, member=each["pool"], new=on))
    return tuple(out)


def assessments_touched(
    assessments: Mapping[str, Any] | None, questions: Questions | None, changes: Iterable[Change]
) -> tuple[Change, ...]:
    """Return the assessments that draw from topics in which questions changed, with these."""
    touched = {
        each.id for each in changes if each.kind.startswith("item-") and each.member == "assessment"
    }
    out = []
    for name, assessment in (assessments or {}).items():
        asked = [
            item
            for item, each in (questions or {}).items()
            if item in touched and each["topic"] in assessment["topics"]
        ]
        if asked:
            out.append(Change(kind="assessment-items", id=name, new=asked))
    return tuple(out)
