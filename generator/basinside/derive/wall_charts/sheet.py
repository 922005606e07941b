"""What a wall chart's sheet has left for the steps, under its head and above its foot."""

from __future__ import annotations

from typing import Final

from basinside.derive.wall_charts.text_width import text_lines
from basinside.model.content import Content
from basinside.model.derived import WholeProcedure

SHEET_WIDTH_MM: Final = 194.0
SHEET_HEIGHT_MM: Final = 264.0
"""What A4 (210 by 297 mm) and Letter (215.9 by 279.4 mm) share inside margins of 7 and 8 mm,
with a little kept back."""

NOTICE_MM: Final = 5.5
"""A line such as that of a demonstration."""
DRAWING_MM: Final = 40.0
"""The width of a drawing beside the title, with its gap."""
LEAST_HEAD_MM: Final = 30.0
TITLE_LINE_MM, TITLE_MM_IN_SIZE = 8.2, 7.76  # 22 pt
HEAD_LINE_MM, HEAD_MM_IN_SIZE = 4.4, 3.53  # 10 pt
FOOT_LINE_MM, FOOT_MM_IN_SIZE = 4.0, 3.18  # 9 pt
HEAD_WORDS: Final = "x" * 14 + " nnnnnnn" * 13
HEAT_WORDS: Final = "x" * 14 + " nnnnnnn" * 7
FOOT_WORDS: Final = "x" * 14 + " nnnnnnn" * 12
"""Room for our own words in the head and in the foot, whatever the language."""
BETWEEN_MM: Final = 5.5
"""Rules and gaps between head, steps and foot."""


def room_for_steps(content: Content, whole: WholeProcedure) -> float:
    """Return the height that is left for the two columns of steps, in mm."""
    return (
        SHEET_HEIGHT_MM
        - _notices(content)
        - _head(content, whole)
        - _foot(content, whole)
        - BETWEEN_MM
    )


def _notices(content: Content) -> float:
    handbook = content.handbook
    if handbook is None or not handbook.demonstration:
        return 0
    room = int(SHEET_WIDTH_MM / FOOT_MM_IN_SIZE * 100)
    lines = text_lines(f"nnnnnnnnnnnnnnn {handbook.demonstration}", room)
    return NOTICE_MM + FOOT_LINE_MM * (lines - 1)


def _head(content: Content, whole: WholeProcedure) -> float:
    instrument, procedure = whole.instrument, whole.procedure
    drawn = instrument is not None and bool(instrument.drawing or instrument.assembled)
    wide = SHEET_WIDTH_MM - (DRAWING_MM if drawn else 0)
    name = instrument.name if instrument else ""
    title = procedure.title or f"{name}: {whole.route.name if whole.route else ''}"
    said = [HEAD_WORDS]
    if instrument is not None:
        said.append(instrument.model or "")
        if instrument.applies_to:
            said.append(instrument.applies_to.marked)
        for alike in instrument.look_alikes:
            other = content.instruments.get(alike.instrument)
            said.append(other.name if other else alike.instrument)
        if len(whole.parts) < len(instrument.parts):
            said.extend(part.shown_name for part in whole.parts)
        refused = [
            part.shown_name
            for part in instrument.parts
            if part.survives and False in part.survives.routes.values()
        ]
        said.extend((HEAT_WORDS, *refused) if refused else ())
    if procedure.vessel:
        vessel = content.vessel(procedure.vessel)
        said.append((vessel.name if vessel else None) or procedure.vessel)
    lines = text_lines(" ".join(said), int(wide / HEAD_MM_IN_SIZE * 100), bold=True)
    titles = text_lines(title, int(wide / TITLE_MM_IN_SIZE * 100), bold=True)
    return max(LEAST_HEAD_MM if drawn else 0, titles * TITLE_LINE_MM + (lines + 1) * HEAD_LINE_MM)


def _foot(content: Content, whole: WholeProcedure) -> float:
    handbook = content.handbook
    if handbook is None:
        return 0
    said = [FOOT_WORDS, handbook.edition, handbook.responsible, handbook.title]
    for contact in handbook.contacts[:1]:
        said.extend((contact.who, contact.day, contact.night))
    name = whole.procedure.procedure
    said.extend(each.at for each in handbook.posted if each.of == name)
    room = int(SHEET_WIDTH_MM / FOOT_MM_IN_SIZE * 100)
    return text_lines(" ".join(said), room) * FOOT_LINE_MM
