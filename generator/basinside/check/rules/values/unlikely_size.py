"""The rule unlikely-size."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.limits import outside
from basinside.check.rule import Finding, rule
from basinside.check.saying import amount
from basinside.check.used_times import Use, seconds, uses
from basinside.model.figure import Figure
from basinside.problem import Level

FAR: Final = 10
"""Times less or more than the source prints (our own bound)."""
MINUTE: Final = 60
HOUR: Final = 60 * MINUTE
DAY: Final = 24 * HOUR
USUAL: Final[dict[str, tuple[int, int]]] = {
    "hold": (MINUTE, 2 * DAY),
    "drying or cooling": (3 * MINUTE, 2 * DAY),
    "time to prepare": (30, 2 * DAY),
    "washing of hands": (15, 10 * MINUTE),
    "rinse": (5, HOUR),
    "wait": (2, 2 * DAY),
    "test wait": (5, HOUR),
    "wait before cleaning": (10 * MINUTE, DAY),
    "time on the shelf": (HOUR, 5 * 365 * DAY),
    "bath life": (HOUR, 90 * DAY),
    "stock life": (30 * DAY, 5 * 365 * DAY),
    "wait at once": (MINUTE, 12 * HOUR),
    "time to report": (5 * MINUTE, 7 * DAY),
    "time between spore tests": (12 * HOUR, 366 * DAY),
}
"""Seconds between which each time lies in every clinic (common practice; our own bounds)."""


@rule(level=Level.WARN)
def check_unlikely_size(checked: Checked) -> Iterator[Finding]:
    """No time is of a size that such a time never has.

    Why: a tired hand writes 20 s for 20 min, or 14 weeks for 14 days, and where no source stands
    beside the value nothing else objects.
    What is looked at is for what a field uses the value: a soak or an exposure is held for a minute
    at least and two days at most, cooling and drying for three minutes; hands are washed for 15 s
    at least; a bath lasts an hour at least and 90 days at most, a product in stock 30 days at
    least; the wait before cleaning is 10 min at least and a day at most; a test waits 5 s at least.
    Any value is asked whether it lies within ten times of what its source prints.
    Bad: `detergent.soak` of 5 s.
    Good: `detergent.soak` of 5 min. Is it really so long? Waive it with the reason.
    Source: common practice.
    """
    for name, figure in checked.content.figures.items():
        far = _far(figure)
        if far:
            yield Finding(
                figure.place.at("value"),
                f"{name} is {amount(figure.value)}, which is very far from the {far} that its"
                f" source prints ({checked.cited(figure.source)})",
                "Look at its unit.",
                (figure.place,),
            )
    told: set[tuple[str, str]] = set()
    for use in uses(checked):
        used = checked.content.figures.get(use.figure)
        if used is None or (use.what, use.figure) in told:
            continue
        said = _unlikely(use, used)
        if said:
            told.add((use.what, use.figure))
            yield Finding(
                used.place.at("value"),
                f"{use.figure} is {amount(used.value)}, which is {said} for the {use.what}"
                f" of {use.by}",
                "Look at its unit.",
                (used.place, *use.also),
            )


def _far(figure: Figure) -> str:
    """Return what the source prints where the value is ten times less or more, or nothing."""
    says = figure.source_says
    if says is None or outside(figure.value, says):
        return ""  # figure-outside-source-limits tells what is outside
    printed = [each for each in (says.at_least, says.at_most, *(says.between or ())) if each]
    base = figure.value.base
    near = any(each.base < base * FAR and base < each.base * FAR for each in printed)
    return "" if near or not printed else amount(printed[0])


def _unlikely(use: Use, figure: Figure) -> str:
    time = seconds(figure.value)
    if time is None:
        return ""
    least, most = USUAL[use.what]
    return "very short" if time < least else "very long" if time > most else ""
