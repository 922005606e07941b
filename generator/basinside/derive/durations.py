"""About how long a procedure takes: what is held, and an allowance for each step by hand."""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache
from typing import Final

from basinside.model.content import Content
from basinside.model.entry import FigureRef
from basinside.model.procedure import Stage, Step
from basinside.quantity import Quantity
from basinside.units import Kind

HANDLING_SECONDS_PER_STEP: Final = 60
"""Allowance for a step without a held time: common practice, an estimate shown as “about”."""
ROUNDED_TO_SECONDS: Final = 300
SECONDS_IN_HOUR: Final = 3600


def held_seconds(content: Content, reference: FigureRef | None) -> Fraction:
    """Return the seconds of a referenced time, or nought when it is no time."""
    figure = content.figures.get(reference.figure) if reference else None
    if figure is None or figure.value.kind is not Kind.TIME:
        return Fraction(0)
    return figure.value.base


def stages_about(
    content: Content, stages: tuple[Stage, ...]
) -> tuple[Quantity, tuple[Quantity | None, ...]]:
    """Return about how long all steps take, and each stage; None for a stage without steps.

    The whole is the sum of the stages as they are shown, so that who adds them up comes to it.
    """
    seconds = [sum(_step_seconds(content, step) for step in stage.steps) for stage in stages]
    shown = tuple(about(each) if each else None for each in seconds)
    return about(sum(_whole(each.base) for each in shown if each)), shown


def _step_seconds(content: Content, step: Step) -> Fraction | int:
    if step.hold is None and step.wait is None:
        return HANDLING_SECONDS_PER_STEP
    held = held_seconds(content, step.hold) + held_seconds(content, step.wait)
    return _whole(held) or HANDLING_SECONDS_PER_STEP


def _whole(seconds: Fraction) -> Fraction | int:
    """Return whole seconds as such: adding them is ten times faster than adding fractions."""
    return seconds.numerator if seconds.denominator == 1 else seconds


@lru_cache(maxsize=4096)
def about(seconds: Fraction | int) -> Quantity:
    """Return a duration rounded up to five minutes, in hours and minutes."""
    rounded = -(-seconds // ROUNDED_TO_SECONDS) * ROUNDED_TO_SECONDS
    minutes = Quantity(number=Fraction(rounded, 60), unit="min")
    return minutes if rounded < SECONDS_IN_HOUR else minutes.in_unit("h min")
