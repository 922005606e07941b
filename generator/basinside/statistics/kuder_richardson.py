"""How far the items of a test tell the same: Kuder and Richardson's formulas 20 and 21.

Source: Kuder and Richardson, The theory of the estimation of test reliability, Psychometrika 2
(1937) 151 (from memory). The variance is divided by the number of people: divided by one less,
formula 20 would no longer be Cronbach's alpha.
"""

from __future__ import annotations

from fractions import Fraction

from basinside.statistics.marks import Marks, read_marks
from basinside.statistics.share import Written, as_written


def kr20(marks: Marks) -> float | None:
    """Return formula 20; None with fewer than two items, or when all have the same number right.

    Raises:
        ValueError: as `read_marks`.
    """
    rows = read_marks(marks)
    people, items = len(rows), len(rows[0])
    variance = score_variance(marks)
    if items < 2 or not variance:
        return None
    shares = [Fraction(sum(column), people) for column in zip(*rows, strict=True)]
    uncertain = sum((p * (1 - p) for p in shares), Fraction())
    return float(Fraction(items, items - 1) * (1 - uncertain / variance))


def kr21(items: int, mean: Written, variance: Written) -> float | None:
    """Return formula 21, which needs no answers; never more than formula 20.

    Args:
        items: of the test, 2 or more.
        mean: of the number right.
        variance: of the number right, divided by the number of people; None comes back for 0.

    Raises:
        ValueError: when there are fewer than two items.

    >>> round(kr21(10, 8, 3), 6)
    0.518519
    """
    exact = exact_kr21(items, as_written(mean), as_written(variance))
    return None if exact is None else float(exact)


def exact_kr21(items: int, mean: Fraction, variance: Fraction) -> Fraction | None:
    """Return `kr21` as a fraction."""
    if items < 2:
        raise ValueError("a test of one item does not agree with itself")
    if not variance:
        return None
    return Fraction(items, items - 1) * (1 - mean * (items - mean) / (items * variance))


def score_mean(marks: Marks) -> Fraction:
    """Return the mean of the number right."""
    rows = read_marks(marks)
    return Fraction(sum(map(sum, rows)), len(rows))


def score_variance(marks: Marks) -> Fraction:
    """Return the variance of the number right, divided by the number of people."""
    totals = [sum(row) for row in read_marks(marks)]
    mean = Fraction(sum(totals), len(totals))
    return sum(((each - mean) ** 2 for each in totals), Fraction()) / len(totals)
