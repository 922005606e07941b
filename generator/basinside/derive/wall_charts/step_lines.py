"""What a wall chart says of a step, and how many lines that takes at a width.

The same sentence stands in many procedures, so its lines are counted once.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress
from typing import Final

from basinside.derive.wall_charts.text_width import lines_of, width
from basinside.model.content import Content
from basinside.model.derived import PlacedStep, WholeProcedure
from basinside.model.prose import Words, read_prose, references
from basinside.quantity import QuantityError, in_words

LARGE: Final = 1.2
"""A value is this much larger than the words around it, and bold."""
SAFETY_WORDS: Final = 440
"""Room for the words “Safety step” before a sentence, in hundredths of its size."""
SIGN: Final = 135
SIGN_WORD: Final = 0.7
"""Room for the sign of a danger, in hundredths of the size, and the size of its word."""


class StepLines:
    """How many lines the steps of a handbook take on its wall charts."""

    def __init__(self, content: Content) -> None:
        self._content = content
        self._words: dict[tuple[str, bool, str], list[int]] = {}
        self._lines: dict[tuple[str, bool, str, int, str], int] = {}

    def count(self, placed: PlacedStep, beside: str, line: int, *, word: bool) -> int:
        """Return the lines that a step takes.

        Args:
            placed: the step.
            beside: the value that stands after its sentence, or nothing.
            line: the width of a line, in hundredths of the size of the letters.
            word: whether the sign of its danger stands before its sentence, with its word; else it
                stands under the number, which is the second line.
        """
        step, text = placed.step, chart_text(placed)
        danger = step.danger.kind if word and step.danger else ""
        key = (text, step.safety, beside, line, danger)
        if key not in self._lines:
            words = self._widths(text, step.safety, beside)
            if danger:
                words = [SIGN + int(SIGN_WORD * width(danger, bold=True)), *words]
            self._lines[key] = lines_of(words, line)
        return max(self._lines[key], 2 if step.danger and not word else 1)

    def least(self, placed: PlacedStep, beside: str, line: int) -> int:
        """Return the lines that a step takes, the word of its danger there where it is free."""
        lines = self.count(placed, beside, line, word=False)
        if placed.danger is None:
            return lines
        return min(lines, self.count(placed, beside, line, word=True))

    def value_beside(self, placed: PlacedStep) -> str:
        """Return the one value that a step's short sentence leaves out, or nothing."""
        step = placed.step
        for reference in (placed.hold, step.wait, step.strength, placed.temperature):
            if reference is not None and reference.figure in self._content.figures:
                named = {each.figure for each in references(chart_text(placed))}
                return "" if reference.figure in named else reference.figure
        return ""

    def values_beside(self, whole: WholeProcedure) -> Iterator[tuple[int, str]]:
        """Yield a step's number with the one value that its short sentence leaves out."""
        for placed in whole.steps:
            figure = self.value_beside(placed)
            if figure:
                yield placed.number, figure

    def _widths(self, text: str, safety: bool, beside: str) -> list[int]:  # noqa: FBT001
        """Return the width of each word of a step, values larger, in hundredths of its size."""
        key = (text, safety, beside)
        if key not in self._words:
            self._words[key] = _words(self._content, text, safety=safety, beside=beside)
        return self._words[key]


def chart_text(placed: PlacedStep) -> str:
    """Return what a wall chart says of a step: its short sentence, else its whole one."""
    return placed.step.wall or placed.step.do


def _words(content: Content, text: str, *, safety: bool, beside: str) -> list[int]:
    found = [SAFETY_WORDS] if safety else []
    glued = False
    for span in read_prose(text):
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
