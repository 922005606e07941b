"""Do those who know the rest have this item right? Item with rest, so that none helps itself.

Source: Crocker and Algina, Introduction to Classical and Modern Test Theory, 1986 (from memory).
"""

from __future__ import annotations

from math import sqrt

from basinside.statistics.marks import Marks, read_marks


def item_rest(marks: Marks) -> tuple[float | None, ...]:
    """Return for each item its correlation with the number right of all other items.

    None, and never 0, where there is none to speak of: an item that everybody or nobody had right,
    or others in which all are alike. Below 0, who knows more has it wrong: look at its key.

    Raises:
        ValueError: as `read_marks`.
    """
    rows = read_marks(marks)
    people = len(rows)
    found: list[float | None] = []
    for n in range(len(rows[0])):
        own = [row[n] for row in rows]
        rest = [sum(row) - row[n] for row in rows]
        both = people * sum(x * y for x, y in zip(own, rest, strict=True)) - sum(own) * sum(rest)
        spread = (people * sum(own) - sum(own) ** 2) * (
            people * sum(y * y for y in rest) - sum(rest) ** 2
        )
        found.append(both / sqrt(spread) if spread else None)
    return tuple(found)
