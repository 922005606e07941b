"""Wall charts: whether a procedure fits on one sheet at arm's length, and how it is laid out.

The sheet is what A4 and Letter have in common. Everything is counted in millimetres and from the
size of the letters; the style sheet of the component ``wall-chart`` has the same measures. What is
counted is never less than what a browser sets, so that a chart which fits here fits on paper.
Source of the measures: common practice; ISO 216 and ANSI/ASME Y14.1 for the paper.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import chain
from typing import Final

from basinside.derive.wall_charts.sheet import Sheet, strip_mm
from basinside.derive.wall_charts.step_lines import StepLines
from basinside.derive.wall_charts.strip import chemical_contact, worn_at
from basinside.model.content import Content
from basinside.model.derived import WholeProcedure
from basinside.model.wall_chart import WallChart

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
UNEVEN: Final = 1.06
"""How much taller the taller column may be for the sake of a stage that stays whole."""
SURE: Final = 0.98
"""The share of a line that is counted on: another face may be a little wider."""


class ChartMaker:
    """What lays out the wall charts of one handbook."""

    def __init__(self, content: Content) -> None:
        self._content = content
        self._sheet = Sheet(content)
        self._lines = StepLines(content)

    def chart(self, whole: WholeProcedure) -> WallChart:
        """Return the layout of a procedure's wall chart at the largest size that fits."""
        beside = tuple(self._lines.values_beside(whole))
        worn, contact = worn_at(whole), chemical_contact(self._content, whole)
        short = tuple((each, "") for each, _steps in worn)
        sheet = self._sheet.room_for_steps_and_strip(whole, contact)
        room = sheet - strip_mm(short)
        for points in SIZES_POINTS:
            free = self._free_words(whole, beside, points)
            heights = self._heights(whole, beside, points, free)
            last = points == SIZES_POINTS[-1]
            if sum(heights) / 2 > room and not last:
                continue  # however it is cut, one of two columns has half of it
            cut, needed = _cut(whole, heights, points, room)
            if needed <= room or last:
                break
        roomy = sheet - strip_mm(worn)
        if needed <= roomy:  # the strip has room for the numbers of the steps, too
            room, short = roomy, worn
        named = free
        for words in _more_words(whole, free):
            heights = self._heights(whole, beside, points, words)
            cut_with, needed_with = _cut(whole, heights, points, room)
            if needed_with <= room:
                named, cut, needed = words, cut_with, needed_with
                break
        numbers = [placed.number for placed in whole.steps]
        return WallChart(
            points=points,
            columns=(tuple(numbers[:cut]), tuple(numbers[cut:])),
            beside=beside,
            needed_mm=needed,
            room_mm=room,
            worn=short,
            named=tuple(sorted(named)),
            chemical_contact=contact,
        )

    def surely_fits(self, whole: WholeProcedure) -> bool:
        """Whether a chart fits at the smallest size; one that does not may still at a larger."""
        smallest = SIZES_POINTS[-1]
        contact = chemical_contact(self._content, whole)
        worn = dict.fromkeys(chain.from_iterable([placed.wear for placed in whole.steps]))
        short = tuple([(each, "") for each in worn])
        room = self._sheet.room_for_steps_and_strip(whole, contact) - strip_mm(short)
        size_mm, line, large = (
            smallest * MILLIMETRES_IN_POINT,
            _line(smallest),
            self._lines.value_beside,
        )
        heights = []
        for placed in whole.steps:
            lines = self._lines.least(placed, large(placed), line)
            heights.append(size_mm * (lines * LINE + STEP_GAP))
        return _cut(whole, heights, smallest, room)[1] <= room

    def _heights(
        self,
        whole: WholeProcedure,
        beside: tuple[tuple[int, str], ...],
        points: int,
        named: frozenset[int],
    ) -> list[float]:
        """Return the height of each step at a size, in mm; ``named`` have the word of a danger."""
        size_mm, line, large = points * MILLIMETRES_IN_POINT, _line(points), dict(beside)
        count = self._lines.count
        return [
            size_mm
            * (
                count(each, large.get(each.number, ""), line, word=each.number in named) * LINE
                + STEP_GAP
            )
            for each in whole.steps
        ]

    def _free_words(
        self, whole: WholeProcedure, beside: tuple[tuple[int, str], ...], points: int
    ) -> frozenset[int]:
        """Return the steps where the sign of a danger with its word takes no further line."""
        line, large, count = _line(points), dict(beside), self._lines.count
        return frozenset(
            each.number
            for each in whole.steps
            if each.step.danger
            and count(each, large.get(each.number, ""), line, word=True)
            <= count(each, large.get(each.number, ""), line, word=False)
        )


def _line(points: int) -> int:
    """Return the width of a line of a step, in hundredths of the size of its letters."""
    return int((COLUMN_MM / (points * MILLIMETRES_IN_POINT) - BESIDE_TEXT) * 100 * SURE)


def _more_words(whole: WholeProcedure, free: frozenset[int]) -> Iterator[frozenset[int]]:
    """Yield steps whose signs have words: all with a danger, then also the first of each danger."""
    kinds = [(each.number, each.step.danger.kind) for each in whole.steps if each.step.danger]
    yield frozenset(number for number, _kind in kinds)
    yield free | set({kind: number for number, kind in reversed(kinds)}.values())


def _cut(
    whole: WholeProcedure, heights: list[float], points: int, room: float
) -> tuple[int, float]:
    """Return how many steps stand in the first column, and how tall the taller column is, in mm.

    A cut between two stages is taken where one fits and the columns stay about even; else the one
    with the shortest columns.
    """
    steps, stage_mm = whole.steps, points * MILLIMETRES_IN_POINT * STAGE
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
