"""How many sets of an instrument a day's cases need."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from basinside.derive.amounts.numbers import plain, up
from basinside.derive.amounts.typed import Reader
from basinside.model.amounts import CAUTIONS, SOURCES, Amount, Answer, Ground, said
from basinside.science.caseload import MINUTES_AN_HOUR, sets_needed

TURNAROUNDS: Final = {"min": ("1", "10080"), "h": ("0.1", "168")}  # up to a week (our own bound)


def sets(_ground: Ground, read: Reader) -> Answer:
    """Answer how many sets must be owned so that the reserve stays untouched."""
    cases = read.number("cases", "0", "1000")
    unit = read.choice("unit", TURNAROUNDS)
    turnaround = read.number("turnaround", *TURNAROUNDS[unit], unit)
    minutes = turnaround * (MINUTES_AN_HOUR if unit == "h" else 1)
    hours = read.number("hours", "1", "24", "h")
    reserve = read.whole("reserve", "0", "100")
    needed = sets_needed(cases, minutes, hours, reserve)
    open_minutes = hours * MINUTES_AN_HOUR
    return Answer(
        kind="sets",
        inputs=(
            said("echo-cases", number=plain(cases)),
            said("echo-turnaround", number=plain(turnaround), unit=unit),
            said("echo-hours", number=plain(hours)),
            said("echo-reserve", number=str(reserve)),
        ),
        amounts=(Amount(number=str(needed), unit="sets", of=said("of-sets")),),
        working=(
            said(
                "work-sets",
                cases=plain(cases),
                minutes=plain(minutes),
                open=plain(open_minutes),
                share=plain(up(Fraction(cases * minutes) / open_minutes)),
                turning=str(needed - reserve),
            ),
            said("work-reserve", turning=str(needed - reserve), reserve=str(reserve),
                 total=str(needed)),
        ),
        cautions=CAUTIONS["sets"],
        sources=SOURCES["sets"],
    )  # fmt: skip
