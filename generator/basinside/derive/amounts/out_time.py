"""When a soak or a boil is over: the clock time to write on the log, with its day."""

from __future__ import annotations

from datetime import datetime, time, timedelta
from fractions import Fraction
from typing import Final

from basinside.derive.amounts.numbers import plain
from basinside.derive.amounts.typed import Reader
from basinside.model.amounts import CAUTIONS, SOURCES, Amount, Answer, Ground, Said, said
from basinside.science.clocks import out_time as out_at

SECONDS: Final = {"min": 60, "h": 3600}
HOLDS: Final = {"min": ("1", "10080"), "h": ("0.1", "168")}  # up to a week (our own bound)


def out_time(ground: Ground, read: Reader) -> Answer:
    """Answer when something may come out, and when it must be out."""
    day, minutes = read.moment("start")
    start = datetime.combine(day, time()) + timedelta(minutes=minutes)
    seconds, longest, echo = _hold(ground, read)
    out = _whole_minute(out_at(start, seconds))
    amounts = [Amount(number=_clock(out), unit="", of=_on("out", start, out))]
    if longest is not None:
        late = start + timedelta(seconds=longest // 60 * 60)
        amounts.append(Amount(number=_clock(late), unit="", of=_on("latest", start, late)))
    return Answer(
        kind="out-time",
        inputs=(said("echo-start", time=_clock(start), start_day=day.isoformat()), echo),
        amounts=tuple(amounts),
        working=(
            said(
                "work-out",
                start=_clock(start),
                minutes=plain(Fraction(-(-seconds.numerator // (60 * seconds.denominator)))),
                out=_clock(out),
            ),
        ),
        cautions=CAUTIONS["out-time"],
        sources=SOURCES["out-time"],
    )


def _hold(ground: Ground, read: Reader) -> tuple[Fraction, int | None, Said]:
    own = {each.figure: each for each in ground.holds}
    asked = read.choice("hold", ("other", *own))
    if asked != "other":
        found = own[asked]
        seconds = Fraction(found.seconds)
        longest = found.longest
        minutes = -(-found.seconds // SECONDS["min"])
        return seconds, longest, said("echo-own-hold", number=str(minutes), figure=asked)
    unit = read.choice("unit", SECONDS)
    number = read.number("time", *HOLDS[unit], unit)
    return number * SECONDS[unit], None, said("echo-hold", number=plain(number), unit=unit)


def _whole_minute(moment: datetime) -> datetime:
    """Return a moment, rounded up to the minute that a wall clock shows."""
    whole = moment.replace(second=0, microsecond=0)
    return whole if whole == moment else whole + timedelta(minutes=1)


def _clock(moment: datetime) -> str:
    return f"{moment.hour:02}:{moment.minute:02}"


def _on(word: str, start: datetime, moment: datetime) -> Said:
    days = (moment.date() - start.date()).days
    code = "same-day" if days == 0 else "next-day" if days == 1 else "days-later"
    holes = {"out_day": moment.date().isoformat()}
    if days > 1:
        holes["days"] = str(days)
    return said(f"{word}-{code}", **holes)
