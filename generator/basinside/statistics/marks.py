"""What people had right: a row a person, a column an item, 1 or 0."""

from __future__ import annotations

from collections.abc import Sequence

Marks = Sequence[Sequence[int]]
"""1 for right, 0 for wrong or left out; every row as long as every other."""


def read_marks(marks: Marks) -> tuple[tuple[int, ...], ...]:
    """Return marks as they are counted with.

    Raises:
        ValueError: when there is nobody, no item, a row of another length, or a mark but 0 and 1.
    """
    rows = tuple(tuple(row) for row in marks)
    if not rows or not rows[0]:
        raise ValueError("nobody answered anything")
    if len({len(row) for row in rows}) > 1:
        raise ValueError("everybody answers the same items")
    if any(each not in (0, 1) for row in rows for each in row):
        raise ValueError("a mark is 1 for right or 0 for wrong")
    return rows
