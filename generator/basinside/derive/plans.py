"""Items to marking plans: data that the program and the page evaluate alike."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, Final

from basinside.model.quiz import Item, Option

ITEM_WORTH: Final = 60
"""Points of every item: divisible by 2, 3, 4, 5 and 6, so that shares stay whole."""

Plan = dict[str, Any]


def marking_plan(item: Item, options: Sequence[Option] | None = None) -> Plan:
    """Return the marking plan of an item for its options in the order given.

    Args:
        item: the item.
        options: its options in the order that answers refer to; the authored order by default.
    """
    shown = tuple(options if options is not None else item.options)
    keys = [n for n, option in enumerate(shown) if option.is_right]
    by_share = item.kind == "multiple" and not item.critical
    return {
        "item": item.item,
        "critical": item.critical,
        "worth": ITEM_WORTH,
        "options": len(shown),
        "points": {"kind": "plus-minus", "keys": keys} if by_share else {"kind": "all-or-none"},
        "pass_all": [
            {"has": n} if option.is_right else {"hasnt": n} for n, option in enumerate(shown)
        ],
        "fail_any": [{"has": n} for n, option in enumerate(shown) if option.unsafe],
    }
