"""Evaluate a marking plan: an answer in, points out; the page's script does the same.

A plan is data that ``derive.plans`` makes of an item. Positions are those of the options in the
order the plan was made for. Nothing here decides what is right; the plan does. Open to all rooms.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Any, Final, TypeVar, overload

from basinside.model import attempt as attempts

_DECIMAL: Final = re.compile(r"-?[0-9]{1,12}(\.[0-9]{1,12})?\Z", re.ASCII)

K = TypeVar("K")

Plan = Mapping[str, Any]
Answer = Mapping[str, Any]


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """What an answer is worth: points, whether they are all there, unsafe positions chosen."""

    points: int
    passed: bool
    unsafe: tuple[int, ...] = ()


def items_needed(percent: int, items: int) -> int:
    """Return how many of a form's items must be right, for a cut in whole percent (0 to 100).

    Rounded up, in whole numbers: a cut of 56 % of 15 items is 9, since no part of an item is right;
    one of 56 % of 25 is 14, where a computer's fractions would make it 15 (common practice).
    """
    return -(-items * percent // 100)


@overload
def quotas(percents: Mapping[K, int], total: int) -> dict[K, int]: ...
@overload
def quotas(percents: Sequence[int], total: int) -> list[int]: ...
def quotas(percents: Mapping[K, int] | Sequence[int], total: int) -> dict[K, int] | list[int]:
    """Return whole numbers of items for shares, by largest remainder.

    A tie goes to whoever is written first. The numbers add up to ``total`` whatever the shares add
    up to: they are parts of their sum; only when all are 0 is nothing shared out.

    Args:
        percents: the shares by topic, or in a row; 0 or more each.
        total: how many items there are, 0 or more.

    >>> quotas({"a": 40, "b": 30, "c": 20, "d": 10}, 25)
    {'a': 10, 'b': 8, 'c': 5, 'd': 2}
    >>> quotas([1, 1, 1], 20)
    [7, 7, 6]
    """
    if isinstance(percents, Mapping):
        return dict(zip(percents, quotas(tuple(percents.values()), total), strict=True))
    whole = sum(percents)
    if not whole:
        return [0 for _ in percents]
    out = [share * total // whole for share in percents]
    by_rest = sorted(range(len(out)), key=lambda n: -(percents[n] * total % whole))
    for n in by_rest[: total - sum(out)]:
        out[n] += 1
    return out


def plan_answer(answer: attempts.Answer) -> dict[str, object]:
    """Return the answer of an attempt as plans take it: chosen, order or number, or nothing."""
    if answer.chosen is not None:
        return {"chosen": list(answer.chosen)}
    if answer.ordered is not None:
        return {"order": list(answer.ordered)}
    return {} if answer.number is None else {"number": answer.number}


def evaluate(plan: Plan, answer: Answer) -> Outcome:
    """Return what an answer is worth.

    Args:
        plan: a marking plan (``derive.plans.marking_plan``).
        answer: ``{"chosen": [0, 2]}``, ``{"order": [2, 0, 1]}``, ``{"number": "12.5"}``, or
            ``{}`` when the item was not answered; positions are the plan's.

    No answer, and an answer that does not fit the item (see ``fits``), has no points. Points are
    ``worth`` or none; for ``plus-minus`` they are floor(worth x max(0, H - F) / K) for H hits and
    F false ticks of K keys.
    """
    empty = not answer.get("chosen") and "order" not in answer and "number" not in answer
    if empty or not fits(plan, answer):
        return Outcome(points=0, passed=False)
    failed = [each for each in plan["fail_any"] if _met(each, answer)]
    unsafe = tuple(sorted({each["has"] for each in failed if "has" in each}))
    points = 0 if failed else _points(plan, answer)
    return Outcome(points=points, passed=points == plan["worth"], unsafe=unsafe)


def fits(plan: Plan, answer: Answer) -> bool:
    """Whether an answer is one that the item can have been given.

    Chosen positions rise and exist, an order names each position once, a number is a plain
    decimal of at most 12 digits on either side of its point, and there is one answer at most.
    """
    if sum(kind in answer for kind in ("chosen", "order", "number")) > 1:
        return False
    options: int = plan["options"]
    if "chosen" in answer:
        chosen = list(answer["chosen"])
        return chosen == sorted(set(chosen)) and all(0 <= each < options for each in chosen)
    if "order" in answer:
        return sorted(answer["order"]) == list(range(options))
    return "number" not in answer or bool(_DECIMAL.match(answer["number"]))


def _met(condition: Mapping[str, Any], answer: Answer) -> bool:
    chosen, order = answer.get("chosen", ()), list(answer.get("order", ()))
    if "has" in condition:
        return condition["has"] in chosen
    if "hasnt" in condition:
        return condition["hasnt"] not in chosen
    if "before" in condition:
        first, second = condition["before"]
        return first in order and second in order and order.index(first) < order.index(second)
    between = condition["between"]
    if "number" not in answer:
        return False
    value = Decimal(answer["number"])
    low, high = between.get("low"), between.get("high")
    return (low is None or Decimal(low) <= value) and (high is None or value <= Decimal(high))


def _points(plan: Plan, answer: Answer) -> int:
    worth: int = plan["worth"]
    if plan["points"]["kind"] == "plus-minus":
        keys = plan["points"]["keys"]
        hits = sum(each in keys for each in answer.get("chosen", ()))
        false_ticks = len(answer.get("chosen", ())) - hits
        return worth * max(0, hits - false_ticks) // len(keys)
    return worth if all(_met(each, answer) for each in plan["pass_all"]) else 0
