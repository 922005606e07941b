"""Was a steam load held hot enough for long enough: a typed log, judged.

Time at temperature is what a load is released on; nothing here reckons F0.
"""

from __future__ import annotations

import re
from fractions import Fraction
from math import floor
from typing import Final

from basinside.derive.amounts.numbers import plain, tenths_down
from basinside.derive.amounts.typed import SPACES, Reader, RefusedInputError, bare, echoed
from basinside.model.amounts import CAUTIONS, SOURCES, Amount, Answer, Ground, Said, said
from basinside.science.bounds import exact
from basinside.science.cycle import CycleJudgement, judge_cycle

MOST_READINGS: Final = 500  # of one log (our own bound)
DAY_MINUTES: Final = 1440
CELSIUS: Final = ("-40", "200")
MOST_PLACES: Final = 2  # decimals of a reading
_LINE_ENDS: Final = re.compile(r"\r\n|[\r\n;]")
_GAPS: Final = re.compile(f"[{SPACES}]+")
_CLOCK: Final = re.compile(r"([01]?[0-9]|2[0-3]):([0-5][0-9])")
SLACK: Final = Fraction(1, 10**12)
"""A float of science stands below its number by less; two readings to two decimals cannot come
as near to a tenth of a minute without being there."""


def load(_ground: Ground, read: Reader) -> Answer:
    """Answer whether a recorded run was held, from when, how long, and where it broke."""
    celsius = read.number("temperature", "100", "200", "°C")
    minutes = read.number("minutes", "1", "600", "min")
    times, warmth, clock = _log(read)
    found = judge_cycle(times, warmth, celsius, minutes)
    held = tenths_down(exact("held", found.held_minutes) + SLACK)
    return Answer(
        kind="load",
        inputs=(
            said("echo-needed", celsius=plain(celsius), minutes=plain(minutes)),
            said("echo-log", count=str(len(times))),
        ),
        amounts=(
            Amount(
                number="",
                unit="held" if found.held else "not-held",
                of=said("of-held" if found.held else "of-not-held", celsius=plain(celsius)),
            ),
            Amount(number=plain(held), unit="min", of=said("of-longest", celsius=plain(celsius))),
        ),
        working=_working(found, clock),
        cautions=CAUTIONS["load"],
        sources=SOURCES["load"],
        would_do=()
        if found.held
        else (said("load-not-released"), said("load-run-again"), said("load-tell")),
    )


def _working(found: CycleJudgement, clock: bool) -> tuple[Said, ...]:  # noqa: FBT001
    lines = []
    for code, moment in (
        ("reached", found.reached_at),
        ("broken", found.broken_at),
        ("held-from", found.held_from),
    ):
        if moment is not None:
            lines.append(said(f"work-{code}", at=_at(exact("moment", moment), clock)))
    return tuple(lines) if lines else (said("work-never-reached"),)


def _at(moment: Fraction, clock: bool) -> str:  # noqa: FBT001
    """Return a moment of the log as the log is written: a clock time, or a minute."""
    if not clock:
        return plain(tenths_down(moment))
    minute = floor(moment) % DAY_MINUTES
    return f"{minute // 60:02}:{minute % 60:02}"


def _log(read: Reader) -> tuple[list[Fraction], list[Fraction], bool]:
    """Return the minutes and the temperatures of a log, and whether it has clock times."""
    lines = [line for each in _LINE_ENDS.split(read.text("log")) if (line := bare(each))]
    if len(lines) < 2:
        raise RefusedInputError(said("log-too-short"), said("write-log"))
    if len(lines) > MOST_READINGS:
        raise RefusedInputError(said("log-too-long", most=str(MOST_READINGS)), said("write-log"))
    times: list[Fraction] = []
    warmth: list[Fraction] = []
    clocks: set[bool] = set()
    for at, line in enumerate(lines, 1):
        pieces = _GAPS.split(line)
        if len(pieces) != 2:
            raise RefusedInputError(
                said("log-line", line=str(at), typed=echoed(line)), said("write-log")
            )
        found = _CLOCK.fullmatch(pieces[0])
        clocks.add(found is not None)
        if len(clocks) > 1:
            raise RefusedInputError(said("log-mixed", line=str(at)), said("write-log"))
        if found:
            time = Fraction(int(found[1]) * 60 + int(found[2]))
            if times and time <= times[-1]:
                time += DAY_MINUTES
        else:
            time = _reading(read, pieces[0], "minute", "0", str(DAY_MINUTES), "min")
        if times and time <= times[-1]:
            raise RefusedInputError(said("log-order", line=str(at)), said("write-log"))
        if time - (times[0] if times else time) > DAY_MINUTES:
            raise RefusedInputError(said("log-order", line=str(at)), said("write-log"))
        times.append(time)
        warmth.append(_reading(read, pieces[1], "reading", *CELSIUS, "°C"))
    return times, warmth, clocks == {True}


def _reading(read: Reader, text: str, field: str, low: str, high: str, unit: str) -> Fraction:
    number = read.read(text, field, low, high, unit)
    if (number * 10**MOST_PLACES).denominator != 1:
        raise RefusedInputError(
            said("too-many-figures", field=field, most=str(MOST_PLACES + 3)),
            said("round-it", most=str(MOST_PLACES + 3)),
        )
    return number
