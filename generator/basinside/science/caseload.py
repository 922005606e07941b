"""How many sets of an instrument a day's cases need.

Source: common practice; a count of sets in turn, as for anything that is lent out and comes back.
"""

from __future__ import annotations

from math import ceil

from basinside.science.bounds import Number, above_nought, whole, within

MINUTES_AN_HOUR = 60
HOURS_A_DAY = 24
MOST_CASES_A_DAY = 10_000  # our own bound
LONGEST_TURNAROUND_MINUTES = 100_000  # about ten weeks (our own bound)


def sets_needed(
    cases_per_day: Number, turnaround_minutes: Number, hours_open: Number, ready_reserve: int
) -> int:
    """Sets that are owned so that each case finds one ready and the reserve stays untouched.

    Cases come evenly over the hours in which the clinic is open, and a set can be used again once
    per turnaround: from the start of its case until it is cleaned, made safe and stored. So the
    number in turn is cases x turnaround / minutes open, rounded up: at least one when there are
    cases at all. The ready reserve is added and is not used for planned cases.

    The turnaround counts minutes in which somebody works; while the clinic is closed nothing is
    made ready, and a turnaround longer than a day goes on the next day. Real cases do not come
    evenly: this is the least number, and the reserve is for the rest.

    Parameters
    ----------
    cases_per_day:
        Cases on a day, 0 to 10,000; a share when there are fewer than one a day.
    turnaround_minutes:
        Minutes from the start of a case until its set is ready again, above 0, at most 100,000.
    hours_open:
        Hours in a day in which cases come, above 0, at most 24.
    ready_reserve:
        Sets that always stand ready for an emergency, not below 0.

    Returns
    -------
    int
        Sets.

    Raises
    ------
    ValueError
        When a parameter is outside its range or is no number.

    Examples
    --------
    >>> sets_needed(6, 150, 8, 1)
    3
    """
    cases = within("cases_per_day", cases_per_day, 0, MOST_CASES_A_DAY)
    turnaround = above_nought("turnaround_minutes", turnaround_minutes)
    within("turnaround_minutes", turnaround, 0, LONGEST_TURNAROUND_MINUTES)
    hours = above_nought("hours_open", hours_open)
    within("hours_open", hours, 0, HOURS_A_DAY)
    reserve = whole("ready_reserve", ready_reserve, 0)
    return ceil(cases * turnaround / (hours * MINUTES_AN_HOUR)) + reserve
