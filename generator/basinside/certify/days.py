"""Civil days and months, counted as people at a calendar count them.

Months: the same day of the month, or the last day when that month is shorter; so 12 months after
29 February 2028 is 28 February 2029, and 6 months after 31 August is 28 or 29 February. A day
counts as a whole: what is 90 days old on the day of signing is not older than 90 days. Times of
the clock (48 h) count as whole days, rounded down.
"""

from __future__ import annotations

from datetime import date, timedelta
from typing import Final

from basinside.quantity import Kind, Quantity
from basinside.science.clocks import add_months

SECONDS_A_DAY: Final = 86_400


class NotADurationError(ValueError):
    """The amount is no time, so no day follows from it."""


def day_after(day: date, amount: Quantity) -> date:
    """Return the day an amount later; never past the calendar's end.

    Raises ``NotADurationError`` for an amount that is no time.
    """
    return _moved(day, amount, 1)


def day_before(day: date, amount: Quantity) -> date:
    """Return the day an amount earlier; never before the calendar's beginning.

    Raises ``NotADurationError`` for an amount that is no time.
    """
    return _moved(day, amount, -1)


def _moved(day: date, amount: Quantity, way: int) -> date:
    end = date.max if way > 0 else date.min
    if amount.kind is Kind.MONTHS:
        try:
            return add_months(day, way * int(amount.base))
        except ValueError:
            return end
    if amount.kind is Kind.DAYS:
        days = int(amount.base)
    elif amount.kind is Kind.TIME:
        days = int(amount.base // SECONDS_A_DAY)
    else:
        raise NotADurationError(f"{amount.text()} is no time")
    try:
        return day + timedelta(days=way * days)
    except OverflowError:
        return end
