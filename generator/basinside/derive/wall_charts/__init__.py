"""Wall charts: whether a procedure fits on one sheet at arm's length, and how it is laid out.

The sheet is what A4 and Letter have in common. Everything is counted in millimetres and from the
size of the letters; the style sheet of the component ``wall-chart`` has the same measures. What is
counted is never less than what a browser sets, so that a chart which fits here fits on paper.
Source of the measures: common practice; ISO 216 and ANSI/ASME Y14.1 for the paper.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress
from typing import Final

from basinside.derive.wall_charts.sheet import room_for_steps
from basinside.derive.wall_charts.strip import chemical_contact, worn_at
from basinside.derive.wall_charts.text_width import lines_of, width
from basinside.model.content import Content
from basinside.model.derived import PlacedStep, WholeProcedure
from basinside.model.prose import Words, read_prose
from basinside.model.wall_chart import WallChart
from basinside.quantity import QuantityError, in_words

SIZES_POINTS: Final = (20, 18, 16, 14)
"""The sizes of a chart's steps, the largest that fits is taken; 14 pt is read at arm's length."""
MILLIMETRES_IN_POINT: Final = 25.4 / 72

COLUMN_MM: Final = 95.5
BESIDE_TEXT: Final = 2.3
"""What stands left of a step's sentence, in its size: the heavy rule and the number."""
LINE: Final = 1.14
STEP_GAP: Final = 0.3
STAGE: Final = 1.5
"""Heights in the size of the steps: a line, the room around a step, the name of a stage."""
LARGE: Final = 1.2
"""A value is this much larger than the words around it, and bold."""
SAFETY_WORDS: Final = 440
"""Room for the words “Safety step” before a sentence, in hundredths of its size."""
SIGN: Final = 135
SIGN_WORD: Final = 0.7
"""Room for the sign of a danger, in hundredths of the size, and the size of its word."""
UNEVEN: Final = 1.06
"""How much taller the taller column may be for the sake of a stage that stays whole."""
SURE: Final = 0.98
"""The share of a line that is counted on: another face may be a little wider."""


def wall_chart(content: Content, whole: WholeProcedure) -> WallChart:
    """Return the layout of a procedure's wall chart at the largest size that fits."""
    beside = tuple(_beside(content, whole))
    large = dict(beside)
    words = [_words(content, placed, large.get(placed.number, "")) for placed in whole.steps]
    worn, contact = worn_at(whole), chemical_contact(content, whole)
    short = tuple((each, "") for each, _steps in worn)
    room = room_for_steps(content, whole, short, contact)
    for points in SIZES_POINTS:
        cut, needed = _set(whole, words, points, room)
        if needed <= room or points == SIZES_POINTS[-1]:
            break
    roomy = room_for_steps(content, whole, worn, contact)
    if needed <= roomy:  # the strip has room for the numbers of the steps, too
        room, short = roomy, worn
    with_signs = [
        [*_sign_width(placed), *each] for placed, each in zip(whole.steps, words, strict=True)
    ]
    cut_with, needed_with = _set(whole, with_signs, points, room)
    dangers = needed_with <= room
    if dangers:
        cut, needed = cut_with, needed_with
    numbers = [placed.number for placed in whole.steps]
    return WallChart(
        points=points,
        columns=(tuple(numbers[:cut]), tuple(numbers[cut:])),
        beside=beside,
        needed_mm=needed,
        room_mm=room,
        worn=short,
        dangers=dangers,
        chemical_contact=contact,
    )


def _set(
    whole: WholeProcedure, words: list[list[int]], points: int, room: float
) -> tuple[int, float]:
    """Return how many steps stand in the first column at a size, and the taller column's mm."""
    size_mm = points * MILLIMETRES_IN_POINT
    heights = [size_mm * each for each in _heights(words, size_mm)]
    return _cut(whole, heights, size_mm * STAGE, room)


def _sign_width(placed: PlacedStep) -> tuple[int, ...]:
    danger = placed.step.danger
    return (SIGN + int(SIGN_WORD * width(danger.kind, bold=True)),) if danger else ()


def _beside(content: Content, whole: WholeProcedure) -> Iterator[tuple[int, str]]:
    """Yield the one value of a step that its short sentence leaves out."""
    for placed in whole.steps:
        step = placed.step
        for reference in (step.hold, step.wait, step.strength, step.temperature):
            if reference is not None and reference.figure in content.figures:
                if reference.figure not in _named(placed):
                    yield placed.number, reference.figure
                break


def chart_text(placed: PlacedStep) -> str:
    """Return what a wall chart says of a step: its short sentence, else its whole one."""
    return placed.step.wall or placed.step.do


def _named(placed: PlacedStep) -> set[str]:
    return {each.figure for each in read_prose(chart_text(placed)) if not isinstance(each, Words)}


def _words(content: Content, placed: PlacedStep, beside: str) -> list[int]:
    """Return the width of each word of a step, values larger, in hundredths of its size."""
    found = [SAFETY_WORDS] if placed.step.safety else []
    glued = False
    for span in read_prose(chart_text(placed)):
        if isinstance(span, Words):
            pieces = span.text.replace("\n", " ").split(" ")
            widths = [width(each) for each in pieces]
        else:
            widths = _value_widths(content, span.figure, span.unit)
        if glued and widths and found:
            found[-1] += widths.pop(0)  # a full stop after a value belongs to it
        found.extend(widths)
        glued = True
    if beside:
        found.extend(_value_widths(content, beside, ""))
    return [each for each in found if each]


def _value_widths(content: Content, name: str, unit: str) -> list[int]:
    figure = content.figures.get(name)
    if figure is None:
        return [width(name)]
    value = figure.value
    if unit:
        # A unit of another kind is a problem of the text, said where it stands.
        with suppress(QuantityError):
            value = value.in_unit(unit)
    words = in_words(value.text()).split(" ")
    return [int(LARGE * width(each, bold=True)) + 1 for each in words]


def _heights(words: list[list[int]], size_mm: float) -> Iterator[float]:
    line = int((COLUMN_MM / size_mm - BESIDE_TEXT) * 100 * SURE)
    for each in words:
        yield lines_of(each, line) * LINE + STEP_GAP


def _cut(
    whole: WholeProcedure, heights: list[float], stage_mm: float, room: float
) -> tuple[int, float]:
    """Return how many steps stand in the first column, and how tall the taller column is.

    A cut between two stages is taken where one fits and the columns stay about even; else the one
    with the shortest columns.
    """
    steps = whole.steps
    first = [n == 0 or steps[n].stage is not steps[n - 1].stage for n in range(len(steps))]
    total = sum(heights) + stage_mm * sum(first)
    best, best_between = (0, total), (0, total)
    above = 0.0
    for n, height in enumerate(heights):
        above += height + (stage_mm if first[n] else 0)
        after = n + 1
        again = after < len(steps) and not first[after]  # a stage that goes on says its name again
        below = total - above + (stage_mm if again else 0)
        taller = max(above, below)
        if taller < best[1]:
            best = (after, taller)
        if not again and taller < best_between[1]:
            best_between = (after, taller)
    even = best[1] * UNEVEN
    return best_between if best_between[1] <= min(room, even) else best
