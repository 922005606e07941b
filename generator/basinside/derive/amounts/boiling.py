"""Boiling at an altitude: where water boils, and for how long it is held."""

from __future__ import annotations

from fractions import Fraction
from math import floor

from basinside.derive.amounts.heights import step_at
from basinside.derive.amounts.numbers import plain
from basinside.derive.amounts.typed import Reader, RefusedInputError
from basinside.model.amounts import CAUTIONS, SOURCES, Amount, Answer, Ground, said


def read_altitude(ground: Ground, read: Reader) -> Fraction:
    """Return a typed altitude in metres."""
    try:
        return read.number("altitude", "0", str(ground.heights.highest), "m")
    except RefusedInputError as refused:
        if refused.reason.code != "out-of-range":
            raise
        raise RefusedInputError(refused.reason, said("altitude-metres")) from refused


def boiling(ground: Ground, read: Reader) -> Answer:
    """Answer at what temperature water boils at an altitude, and how long to hold it."""
    metres = read_altitude(ground, read)
    at = step_at(ground.heights, metres)
    tenths = Fraction(ground.heights.boils[at], 10)
    hold = (
        (Amount(number=ground.boil_minutes, unit="min", of=said("of-rolling-boil")),)
        if ground.boil_minutes
        else ()
    )
    enough = ground.enough_celsius
    hot = (
        (said("work-hot-enough", celsius=plain(tenths), enough=enough),)
        if enough and tenths >= Fraction(enough)
        else ()
    )
    return Answer(
        kind="boiling",
        inputs=(said("echo-altitude", number=plain(metres)),),
        amounts=(
            *hold,
            Amount(number=str(floor(tenths)), unit="°C", of=said("of-boiling-water")),
        ),
        working=(
            said("work-height", metres=str(at * ground.heights.step)),
            said("work-boils", celsius=plain(tenths)),
            *hot,
        ),
        cautions=CAUTIONS["boiling"],
        sources=SOURCES["boiling"],
    )
