"""How a wall chart is laid out on its one sheet, or that it does not fit."""

from __future__ import annotations

from dataclasses import dataclass

from basinside.model.words import Worn


@dataclass(frozen=True, slots=True, kw_only=True)
class WallChart:
    """The layout of one procedure's wall chart.

    ``points`` is the size of its steps; ``columns`` holds the step numbers of each column.
    ``beside`` pairs a step's number with the value that is shown large after its sentence, where
    the sentence itself does not say it. ``needed_mm`` and ``room_mm`` are the height of the taller
    column, never too little, and what the sheet has for it.

    ``worn`` is all that its steps ask for, each with the numbers of those steps where there is
    room for them. The sign of a step's danger stands before its sentence with its word in the
    steps of ``named``, as many as have room; in the others it stands under their number.
    ``chemical_contact`` is whom to ring when a chemical of its steps splashed somebody; empty
    without one.
    """

    points: int
    columns: tuple[tuple[int, ...], ...]
    beside: tuple[tuple[int, str], ...]
    needed_mm: float
    room_mm: float
    worn: tuple[tuple[Worn, str], ...] = ()
    named: tuple[int, ...] = ()
    chemical_contact: str = ""

    @property
    def fits(self) -> bool:
        """Whether the chart is sure to fit on its sheet."""
        return self.needed_mm <= self.room_mm

    @property
    def over_percent(self) -> int:
        """By how many per cent the taller column is too long; nought when it fits."""
        return 0 if self.fits else -int(-(self.needed_mm / self.room_mm - 1) * 100 // 1)
