"""Would the same people pass again? From one sitting, by the beta-binomial model.

Source: Huynh, On the reliability of decisions in domain-referenced testing, Journal of Educational
Measurement 13 (1976) 253. Trust it from about 100 people on.
"""

from __future__ import annotations

from fractions import Fraction
from math import comb
from typing import NamedTuple

from basinside.statistics.kuder_richardson import exact_kr21
from basinside.statistics.share import Written, as_written


class Consistency(NamedTuple):
    """How often two forms would decide alike, and how much of that is more than chance."""

    agreement: float
    kappa: float | None
    """None where everybody passes, or nobody: there is then nothing to agree about."""


def decision_consistency(
    items: int, mean: Written, variance: Written, cut: int
) -> Consistency | None:
    """Return how consistent the decisions of a test are.

    Args:
        items: of the test, 2 or more.
        mean: of the number right.
        variance: of the number right, divided by the number of people.
        cut: how many must be right.

    Returns:
        None where the model says nothing: scores that differ no more than chance makes them.

    Raises:
        ValueError: when there are fewer than two items.

    >>> [round(each, 6) for each in decision_consistency(10, 8, 3, 8)]
    [0.720847, 0.371409]
    """
    average = as_written(mean)
    reliability = exact_kr21(items, average, as_written(variance))
    if reliability is None or not 0 < reliability < 1 or not 0 < average < items:
        return None
    alpha = (1 / reliability - 1) * average
    beta = items / reliability - items - alpha
    once, fails = _mixed(alpha, beta, items), range(min(max(0, cut), items + 1))
    fail = sum((comb(items, x) * once[x] for x in fails), Fraction())
    twice = _mixed(alpha, beta, 2 * items)
    fail_twice = sum(
        (comb(items, x) * comb(items, y) * twice[x + y] for x in fails for y in fails), Fraction()
    )
    agreement = 1 + 2 * (fail_twice - fail)
    kappa = (fail_twice - fail**2) / (fail - fail**2) if 0 < fail < 1 else None
    return Consistency(float(agreement), None if kappa is None else float(kappa))


def _mixed(alpha: Fraction, beta: Fraction, items: int) -> tuple[Fraction, ...]:
    """Return B(alpha + k, beta + items - k) / B(alpha, beta) for k = 0 .. items, exactly."""
    first = Fraction(1)
    for n in range(items):
        first *= (beta + n) / (alpha + beta + n)
    found = [first]
    for k in range(items):
        found.append(found[-1] * (alpha + k) / (beta + items - k - 1))
    return tuple(found)
