"""The cut that judges set, item by item, and how sure it is.

Each judge says of each item how large a share of people who are just able enough would have it
right. Source: Angoff, Scales, norms and equivalent scores, in Thorndike (ed.), Educational
Measurement, 2nd edition, 1971, p. 514 (from memory); the components of variance of a crossed
judges-by-items table: Brennan, Generalizability Theory, 2001, section 2.1 (from memory).
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from math import sqrt
from typing import NamedTuple

from basinside.statistics.share import Written, share

Ratings = Sequence[Sequence[Written]]
"""One row a judge, one share of 0 to 1 an item."""


class AngoffCut(NamedTuple):
    """How many items must be right, and by how much that may be off, in items."""

    cut: float
    se_judges: float
    """If other judges like these had rated these very items."""
    se_items: float
    """If other judges had rated other items like these: always the larger doubt of the two."""


class Components(NamedTuple):
    """Variances of a rating, as shares squared: of judges, of items, and what is left."""

    judges: Fraction
    items: Fraction
    residual: Fraction


def angoff(ratings: Ratings) -> AngoffCut:
    """Return the cut of the items rated, and its standard errors.

    Args:
        ratings: a row for each judge, two or more, each with the same items, two or more.

    Raises:
        ValueError: when there are fewer, a rating is no share, or a judge left an item out.

    >>> angoff([[0.5, 0.7], [0.7, 0.9]])
    AngoffCut(cut=1.4, se_judges=0.2, se_items=0.282842712474619)
    """
    rows = _table(ratings)
    judges, items = len(rows), len(rows[0])
    sums = [sum(row, Fraction()) for row in rows]
    mean = sum(sums, Fraction()) / judges
    of_judges = sum(((each - mean) ** 2 for each in sums), Fraction()) / (judges - 1) / judges
    of_items = max(Fraction(), variances(ratings).items) * items
    return AngoffCut(float(mean), sqrt(of_judges), sqrt(of_judges + of_items))


def variances(ratings: Ratings) -> Components:
    """Return the components of variance of a rating.

    A component is an estimate and may be less than nothing where there is hardly any.

    Args:
        ratings: as `angoff` takes them.

    Raises:
        ValueError: as `angoff` does.
    """
    rows = _table(ratings)
    judges, items = len(rows), len(rows[0])
    grand = sum((sum(row, Fraction()) for row in rows), Fraction()) / (judges * items)
    by_judge = [sum(row, Fraction()) / items - grand for row in rows]
    by_item = [sum(column, Fraction()) / judges - grand for column in zip(*rows, strict=True)]
    left = sum(
        (
            (each - grand - by_judge[j] - by_item[i]) ** 2
            for j, row in enumerate(rows)
            for i, each in enumerate(row)
        ),
        Fraction(),
    ) / ((judges - 1) * (items - 1))
    square_judges = items * sum((each**2 for each in by_judge), Fraction()) / (judges - 1)
    square_items = judges * sum((each**2 for each in by_item), Fraction()) / (items - 1)
    return Components((square_judges - left) / items, (square_items - left) / judges, left)


def _table(ratings: Ratings) -> tuple[tuple[Fraction, ...], ...]:
    rows = tuple(tuple(share(each) for each in row) for row in ratings)
    if len(rows) < 2 or len(rows[0]) < 2:
        raise ValueError("one judge, or one item, says nothing about how sure a cut is")
    if len({len(row) for row in rows}) > 1:
        raise ValueError("each judge rates each item")
    return rows
