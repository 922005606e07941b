"""Items to marking plans: data that the program and the page evaluate alike."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction
from typing import Any, Final

from basinside.model.figure import Figure
from basinside.model.item_kinds import Option, pairs_that_matter, right_sides
from basinside.model.quiz import Item
from basinside.quantity import Quantity

ITEM_WORTH: Final = 60
"""Points of every item: divisible by 2, 3, 4, 5 and 6, so that shares stay whole."""
DECIMAL_PLACES: Final = 12
"""Places behind the point of a number in an answer (``model.attempt.Decimal``)."""

Plan = dict[str, Any]
Condition = dict[str, Any]

_NOTHING_PASSES: Final[Condition] = {"between": {"low": "1", "high": "0"}}


def marking_plan(
    item: Item,
    options: Sequence[Option] | None = None,
    figures: Mapping[str, Figure] | None = None,
) -> Plan:
    """Return the marking plan of an item.

    Args:
        item: the item.
        options: the options of a choice or a multiple in the order that answers refer to; the
            authored order by default.
        figures: the values that the number of a numeric item may follow.

    A position is an option's, or an entry's of an order, as written. Of a match it is
    ``left x number of right sides + right``, right sides in their order of
    ``model.item_kinds.right_sides``. A number is in the unit of the right one; nothing passes
    while the value it follows is missing.
    """
    if item.kind == "order":
        pairs = pairs_that_matter(item.entries, item.matters)
        return _plan(
            item,
            options=len(item.entries),
            pass_all=[{"before": [each.first, each.then]} for each in pairs],
        )
    if item.kind == "numeric":
        return _plan(item, options=0, pass_all=[_between(item, figures or {})])
    if item.kind == "match":
        rights = right_sides(item.pairs, item.extra)
        return _plan(
            item,
            options=len(item.pairs) * len(rights),
            pass_all=_chosen(right == pair.right for pair in item.pairs for right in rights),
            fail_any=[
                {"has": left * len(rights) + rights.index(mistake.right)}
                for left, pair in enumerate(item.pairs)
                for mistake in pair.mistakes
                if mistake.unsafe and mistake.right in rights
            ],
        )
    shown = tuple(options if options is not None else item.options)
    plan = _plan(
        item,
        options=len(shown),
        pass_all=_chosen(option.is_right for option in shown),
        fail_any=[{"has": n} for n, option in enumerate(shown) if option.unsafe],
    )
    if item.kind == "multiple" and not item.critical:
        keys = [n for n, option in enumerate(shown) if option.is_right]
        plan["points"] = {"kind": "plus-minus", "keys": keys}
    return plan


def _plan(
    item: Item, *, options: int, pass_all: list[Condition], fail_any: Iterable[Condition] = ()
) -> Plan:
    return {
        "item": item.item,
        "critical": item.critical,
        "worth": ITEM_WORTH,
        "options": options,
        "points": {"kind": "all-or-none"},
        "pass_all": pass_all,
        "fail_any": list(fail_any),
    }


def _chosen(keys: Iterable[bool]) -> list[Condition]:
    return [{"has": n} if key else {"hasnt": n} for n, key in enumerate(keys)]


def _between(item: Item, figures: Mapping[str, Figure]) -> Condition:
    bounds = item.number.bounds(figures) if item.number else None
    if bounds is None:
        return _NOTHING_PASSES
    low, _, high = bounds
    return {"between": {"low": _decimal(low, up=True), "high": _decimal(high, up=False)}}


def _decimal(amount: Quantity, *, up: bool) -> str:
    """Return a number as answers write it; one without an end is rounded to the inner side."""
    scale = 10**DECIMAL_PLACES
    exact: Fraction = amount.number * scale
    whole = -((-exact.numerator) // exact.denominator) if up else exact // 1
    sign, figures = "-" if whole < 0 else "", str(abs(whole)).rjust(DECIMAL_PLACES + 1, "0")
    number, rest = figures[:-DECIMAL_PLACES], figures[-DECIMAL_PLACES:].rstrip("0")
    return f"{sign}{number}{'.' if rest else ''}{rest}"
