"""Whether a load was held hot enough, for long enough, without a break.

Exact fractions throughout: a hold that is too short by any amount is not held, and one that is
exactly long enough is.

Source: timing begins only when the temperature is reached (a health-extension training text on
sterilizing instruments, for steam); that it begins anew after a break is common practice.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from basinside.science.bounds import Number, above_nought, not_above, within
from basinside.science.readings import (
    HIGHEST_READING_CELSIUS,
    LOWEST_READING_CELSIUS,
    read_run,
)


@dataclass(frozen=True, kw_only=True)
class CycleJudgement:
    """What a recorded run shows; times in minutes, on the record's own clock.

    `held`: one unbroken stretch at or above the temperature was as long as needed.
    `broken_at`: where it first fell below, after it had been reached and before the needed time
    was complete; None when that never happened. A run may be broken and yet held: then the time
    began anew and a later stretch was long enough.
    `reached_at`: where it was first reached; None when it never was.
    `held_from`: where the stretch that counts began: the first one that was long enough, or else
    the longest.
    `held_minutes`: how long the longest stretch was; never rounded up.
    """

    held: bool
    broken_at: float | None
    reached_at: float | None
    held_from: float | None
    held_minutes: float


@dataclass(frozen=True, kw_only=True)
class _Stretch:
    """One unbroken time at or above; `fell` when it ended before the record did."""

    start: Fraction
    end: Fraction
    fell: bool

    @property
    def length(self) -> Fraction:
        return self.end - self.start


def judge_cycle(
    minutes: Sequence[Number],
    celsius: Sequence[Number],
    needed_celsius: Number,
    needed_minutes: Number,
) -> CycleJudgement:
    """Judge whether a recorded run was held at or above a temperature for a time.

    Between two readings the temperature is taken as a straight line, so it is reached and left
    where that line crosses. To touch the temperature from above is no break.

    Parameters
    ----------
    minutes:
        When each reading was taken, in minutes, each later than the one before.
    celsius:
        What was read, in °C, -40 to 200, one for each minute.
    needed_celsius:
        Least temperature in °C, -40 to 200.
    needed_minutes:
        Time for which it must be held without a break, in minutes, above 0.

    Returns
    -------
    CycleJudgement
        Whether it was held, where it broke first, and from when and how long it lasted.

    Raises
    ------
    ValueError
        When there are fewer than two readings or not as many of each, when minutes do not
        ascend, or when a number is none or outside its range.

    Examples
    --------
    >>> judge_cycle([0, 10, 45, 50], [100, 121, 121, 100], 121, 30).held
    True
    """
    run = read_run(minutes, celsius)
    hot = within("needed_celsius", needed_celsius, LOWEST_READING_CELSIUS, HIGHEST_READING_CELSIUS)
    needed = above_nought("needed_minutes", needed_minutes)
    stretches = _stretches(run, hot)
    enough = next((each for each in stretches if each.length >= needed), None)
    longest = max(stretches, key=lambda each: each.length, default=None)
    counts = enough or longest
    first = stretches[0] if stretches else None
    broken = first is not None and first.fell and first.length < needed
    return CycleJudgement(
        held=enough is not None,
        broken_at=float(first.end) if first and broken else None,
        reached_at=float(first.start) if first else None,
        held_from=float(counts.start) if counts else None,
        held_minutes=not_above(longest.length) if longest else 0.0,
    )


def _stretches(run: tuple[tuple[Fraction, Fraction], ...], hot: Fraction) -> list[_Stretch]:
    found: list[_Stretch] = []
    start = run[0][0] if run[0][1] >= hot else None
    for (earlier, first), (later, last) in pairwise(run):
        crossing = earlier
        if (first < hot) != (last < hot):
            crossing += (later - earlier) * (hot - first) / (last - first)
        if start is None and last >= hot:
            start = crossing
        elif start is not None and last < hot:
            found.append(_Stretch(start=start, end=crossing, fell=True))
            start = None
    if start is not None:
        found.append(_Stretch(start=start, end=run[-1][0], fell=False))
    return found
