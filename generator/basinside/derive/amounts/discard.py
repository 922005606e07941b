"""When a mixed solution is thrown away: by its days or months, a failed strip, or cloudy."""

from __future__ import annotations

from datetime import date
from typing import Final

from basinside.derive.amounts.typed import Reader, RefusedInputError
from basinside.model.amounts import CAUTIONS, SOURCES, Amount, Answer, Ground, Said, said
from basinside.science.clocks import DiscardReason, discard_at

LIVES: Final = {"day": ("1", "366"), "week": ("1", "52"), "month": ("1", "24")}
"""How long a solution may live at all (our own bounds)."""
DAYS_IN_WEEK: Final = 7
REASONS: Final = {
    DiscardReason.STRIP_FAILED: "discard-strip",
    DiscardReason.CLOUDY: "discard-cloudy",
    DiscardReason.DAYS: "discard-days",
    DiscardReason.MONTHS: "discard-months",
}


def discard(ground: Ground, read: Reader) -> Answer:
    """Answer on which day a solution is thrown away, and why on that day."""
    made = read.day("made")
    if made is None:
        raise RefusedInputError(said("missing", field="made"), said("not-a-day-write"))
    number, unit, echo = _life(ground, read)
    strip = _seen(read, "strip", made)
    cloudy = _seen(read, "cloudy", made)
    days = number * (DAYS_IN_WEEK if unit == "week" else 1)
    found = discard_at(
        made,
        days=None if unit == "month" else days,
        months=number if unit == "month" else None,
        strip_failed_on=strip,
        cloudy_on=cloudy,
    )
    return Answer(
        kind="discard",
        inputs=(said("echo-made", made_day=made.isoformat()), echo, *_echo(strip, cloudy)),
        amounts=(Amount(number=found.on.isoformat(), unit="date", of=said(REASONS[found.reason])),),
        working=(
            said("work-months", made_day=made.isoformat(), number=str(number))
            if unit == "month"
            else said("work-days", made_day=made.isoformat(), number=str(days)),
        ),
        cautions=CAUTIONS["discard"],
        sources=SOURCES["discard"],
    )


def _life(ground: Ground, read: Reader) -> tuple[int, str, Said]:
    own = {each.agent: each for each in ground.lives}
    asked = read.choice("product", ("other", *own))
    if asked != "other":
        found = own[asked]
        return found.number, found.unit, said(f"echo-life-{found.unit}", number=str(found.number))
    unit = read.choice("unit", LIVES)
    number = read.whole("life", *LIVES[unit])
    return number, unit, said(f"echo-life-{unit}", number=str(number))


def _seen(read: Reader, field: str, made: date) -> date | None:
    day = read.day(field)
    if day is not None and day < made:
        raise RefusedInputError(
            said("before-made", field=field, seen_day=day.isoformat(), made_day=made.isoformat()),
            said("check-days"),
        )
    return day


def _echo(strip: date | None, cloudy: date | None) -> tuple[Said, ...]:
    return (
        *((said("echo-strip", strip_day=strip.isoformat()),) if strip else ()),
        *((said("echo-cloudy", cloudy_day=cloudy.isoformat()),) if cloudy else ()),
    )
