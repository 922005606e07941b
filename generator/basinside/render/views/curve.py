"""A recorded run as a drawn line: minutes across, temperature up, the needed level dashed."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from basinside.render.view_types import CurveView, Prose, TickView
from basinside.render.wording import _
from basinside.science.steam import CycleJudgement

WIDTH: Final = 420.0
HEIGHT: Final = 250.0
LEFT: Final = 58.0
RIGHT: Final = 8.0
TOP: Final = 26.0
FOOT: Final = 34.0
MINUTES_APART: Final = 20
CELSIUS_APART: Final = 10
HEADROOM_CELSIUS: Final = 6.0
# The drawing's own units, as the template's view box has them.


def curve_view(
    minutes: Sequence[float],
    celsius: Sequence[float],
    needed_celsius: float,
    judged: CycleJudgement,
    caption: Prose,
) -> CurveView:
    """Return the drawing of a run.

    Args:
        minutes: when each reading was taken, from 0 upwards.
        celsius: what was read, in °C.
        needed_celsius: the temperature that was asked for, in °C.
        judged: what the run shows, on the same clock.
        caption: what stands below the drawing.
    """
    last = max(minutes)
    low, high = min(celsius), max((*celsius, needed_celsius)) + HEADROOM_CELSIUS

    def across(minute: float) -> float:
        return LEFT + minute / last * (WIDTH - LEFT - RIGHT)

    def up(heat: float) -> float:
        return HEIGHT - FOOT - (heat - low) / (high - low) * (HEIGHT - FOOT - TOP)

    start = judged.held_from
    return CurveView(
        alt=_(
            "Temperature over time: it rises to {high}\u00a0°C, {needed}\u00a0°C are needed,"
            " and it stays"
            " there for {held} minutes without a break."
        ).format(
            high=f"{max(celsius):g}",
            needed=f"{needed_celsius:g}",
            held=f"{judged.held_minutes:.0f}",
        ),
        caption=caption,
        points=" ".join(
            f"{across(minute):.1f},{up(heat):.1f}"
            for minute, heat in zip(minutes, celsius, strict=True)
        ),
        needed=f"{up(needed_celsius):.1f}",
        needed_text=_("needed: {celsius}\u00a0°C").format(celsius=f"{needed_celsius:g}"),
        held=()
        if start is None
        else (
            f"{across(start):.1f}",
            f"{across(start + judged.held_minutes) - across(start):.1f}",
        ),
        ticks=(
            *(
                TickView(
                    axis="across", at=f"{across(each):.1f}", text=_("{n}\u00a0min").format(n=each)
                )
                for each in range(0, int(last) + 1, MINUTES_APART)
            ),
            *(
                TickView(axis="up", at=f"{up(each):.1f}", text=_("{n}\u00a0°C").format(n=each))
                for each in range(_first_tick(low), int(high), CELSIUS_APART)
                if abs(each - needed_celsius) > HEADROOM_CELSIUS
            ),
        ),
    )


def _first_tick(low: float) -> int:
    return -int(-low // CELSIUS_APART) * CELSIUS_APART
