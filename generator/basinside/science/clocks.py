"""When a part comes out of a bath, and when a bath or a product is thrown away.

Every time is the clock on the clinic's wall: local, without a time zone. Where clocks are put
forward or back, a hold over that hour is wrong by it, and whoever holds it uses a timer.
Nothing here asks what time it is.

Source: common practice for the counting of days and months; the lives themselves come with their
own sources, and a bath goes as soon as its strip fails or it is cloudy, however young it is.
"""

from __future__ import annotations

from calendar import monthrange
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from enum import StrEnum
from fractions import Fraction
from math import ceil
from typing import TypeVar

from basinside.science.bounds import Number, above_nought, whole

SECONDS_TO_MICROSECONDS = 1_000_000
MONTHS_A_YEAR = 12

Moment = TypeVar("Moment", date, datetime)


class DiscardReason(StrEnum):
    """Why something is thrown away; of reasons on one day the first of these is named."""

    STRIP_FAILED = "strip failed"
    CLOUDY = "cloudy"
    DAYS = "days"
    MONTHS = "months"


@dataclass(frozen=True, kw_only=True)
class Discard:
    """When something is thrown away, and why; it is no longer used from then on."""

    on: date
    reason: DiscardReason


def out_time(start: datetime, hold: timedelta | Number) -> datetime:
    """When a part may come out: the start and the whole hold, over midnight too.

    Parameters
    ----------
    start:
        When the last part was all under, on the wall clock, without a time zone.
    hold:
        How long it is held, above 0: a `timedelta`, or a number of seconds. Less than a
        millionth of a second is rounded up, so that the hold is never cut short.

    Returns
    -------
    datetime
        The time on the wall clock, with its day.

    Raises
    ------
    ValueError
        When the start has a time zone or is no `datetime`, when the hold is not above 0, or when
        the time is after the year 9999.

    Examples
    --------
    >>> out_time(datetime(2026, 12, 31, 23, 50), timedelta(minutes=20))
    datetime.datetime(2027, 1, 1, 0, 10)
    """
    if not isinstance(start, datetime):
        raise ValueError(f"start must be a datetime, not {start}")
    _wall_clock("start", start)
    if not isinstance(hold, timedelta):
        seconds = above_nought("hold", hold)
        hold = _lasting("hold", seconds)
    if hold <= timedelta(0):
        raise ValueError(f"hold must be above 0, not {hold}")
    return _moved(start, hold)


def add_months(moment: Moment, months: int) -> Moment:
    """Return the same day so many months later, or that month's last day where it has none.

    12 months after 29 February 2028 is 28 February 2029; one month after 31 January is the last
    day of February. The earlier of two possible days is the safe side.

    Parameters
    ----------
    moment:
        A day, or a day with its time, which is kept.
    months:
        Whole months, below 0 for earlier; a year is 12.

    Returns
    -------
    date or datetime
        Whichever was given.

    Raises
    ------
    ValueError
        When the moment is none or has a time zone, when the months are no whole number, or when
        the day is outside the calendar's years 1 to 9999.

    Examples
    --------
    >>> add_months(date(2028, 2, 29), 12)
    datetime.date(2029, 2, 28)
    """
    _wall_clock("moment", moment)
    most = MONTHS_A_YEAR * date.max.year
    elapsed = moment.year * MONTHS_A_YEAR + moment.month - 1 + whole("months", months, -most)
    year, month = divmod(elapsed, MONTHS_A_YEAR)
    if not date.min.year <= year <= date.max.year:
        raise ValueError(f"months must stay in the years 1 to {date.max.year}, not {months}")
    last = monthrange(year, month + 1)[1]
    return moment.replace(year=year, month=month + 1, day=min(moment.day, last))


def discard_at(
    made_on: Moment,
    *,
    days: int | None = None,
    months: int | None = None,
    strip_failed_on: Moment | None = None,
    cloudy_on: Moment | None = None,
) -> Discard:
    """When a bath or an opened product is thrown away: whichever comes first.

    The day it was made is day 0 and does not count. What was made on 1 March and lives 14 days is
    thrown away on 15 March and not used on that day, so it is never used when older than 14 days;
    what lives one day is made fresh each day. With times, it is thrown away at the same hour.

    Parameters
    ----------
    made_on:
        Day, or day and time, when it was made, activated or opened.
    days, months:
        How long it lives, whole and at least 1; one of them or both.
    strip_failed_on, cloudy_on:
        When its strip failed and when it was cloudy or soiled, if that was seen; a day or a time
        as `made_on` is, and not before it.

    Returns
    -------
    Discard
        The day (or time) and the reason.

    Raises
    ------
    ValueError
        When neither days nor months are given, when one of them is no whole number of at least
        1, when days and times are mixed, have a time zone or lie before `made_on`, or when the
        day is after the year 9999.

    Examples
    --------
    >>> discard_at(date(2028, 2, 20), days=14, cloudy_on=date(2028, 2, 29)).reason
    <DiscardReason.CLOUDY: 'cloudy'>
    """
    _wall_clock("made_on", made_on)
    if days is None and months is None:
        raise ValueError("days or months must be given: nothing keeps for ever")
    ends: list[tuple[Moment, DiscardReason]] = []
    if strip_failed_on is not None:
        _after_making("strip_failed_on", strip_failed_on, made_on)
        ends.append((strip_failed_on, DiscardReason.STRIP_FAILED))
    if cloudy_on is not None:
        _after_making("cloudy_on", cloudy_on, made_on)
        ends.append((cloudy_on, DiscardReason.CLOUDY))
    if days is not None:
        # A count of days too long for a timedelta leads past the calendar all the same.
        counted = min(whole("days", days, 1), timedelta.max.days)
        ends.append((_moved(made_on, timedelta(days=counted)), DiscardReason.DAYS))
    if months is not None:
        ends.append((add_months(made_on, whole("months", months, 1)), DiscardReason.MONTHS))
    first, why = min(ends, key=lambda end: end[0])
    return Discard(on=first, reason=why)


def _wall_clock(name: str, moment: date) -> None:
    if not isinstance(moment, date):
        raise ValueError(f"{name} must be a date or a datetime, not {moment}")
    if isinstance(moment, datetime) and moment.tzinfo is not None:
        raise ValueError(f"{name} must be a time on the wall, without a time zone, not {moment}")


def _after_making(name: str, seen: Moment, made_on: Moment) -> None:
    _wall_clock(name, seen)
    if isinstance(seen, datetime) != isinstance(made_on, datetime):
        raise ValueError(f"{name} must be a day or a time as made_on is, not {seen}")
    if seen < made_on:
        raise ValueError(f"{name} must not be before made_on, {made_on}, but is {seen}")


def _lasting(name: str, seconds: Fraction) -> timedelta:
    try:
        return timedelta(microseconds=ceil(seconds * SECONDS_TO_MICROSECONDS))
    except OverflowError as error:
        raise ValueError(f"{name} is too long: {float(seconds):g} s") from error


def _moved(moment: Moment, lasting: timedelta) -> Moment:
    try:
        return moment + lasting
    except OverflowError as error:
        raise ValueError(f"the time is after the year {date.max.year}") from error
