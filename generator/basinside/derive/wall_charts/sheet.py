"""What a wall chart's sheet has left for the steps, under its head and above its foot."""

from __future__ import annotations

from functools import lru_cache
from typing import Final

from basinside.derive.wall_charts.text_width import lines_of, text_lines, width
from basinside.model.content import Content
from basinside.model.derived import WholeProcedure
from basinside.model.instrument import Part

SHEET_WIDTH_MM: Final = 194.0
SHEET_HEIGHT_MM: Final = 264.0
"""What A4 (210 by 297 mm) and Letter (215.9 by 279.4 mm) share inside margins of 7 and 8 mm,
with a little kept back."""

NOTICE_MM: Final = 5.5
"""A line such as that of a demonstration."""
DRAWING_MM: Final = 40.0
"""The width of a drawing beside the title, with its gap."""
LEAST_HEAD_MM: Final = 30.0
TITLE_LINE_MM, TITLE_MM_IN_SIZE = 6.8, 6.35  # 18 pt
HEAD_LINE_MM, HEAD_MM_IN_SIZE = 4.4, 3.53  # 10 pt
FOOT_LINE_MM, FOOT_MM_IN_SIZE = 4.0, 3.18  # 9 pt
HEAD_WORDS: Final = "x" * 14 + " nnnnnnn" * 12
ALIKE_WORDS: Final = " ".join(["nnnnnnn"] * 6)
HEAT_WORDS: Final = "x" * 14 + " nnnnnnn" * 8
FOOT_WORDS: Final = "x" * 14 + " nnnnnnn" * 12
"""Room for our own words in the head and in the foot, whatever the language."""
STRIP_LABEL_MM: Final = 15.0
STRIP_SIGN_MM, STRIP_HIGH_MM = 10.5, 8.7
STRIP_LINE_MM, STRIP_MM_IN_SIZE = 3.3, 3.0  # 8.5 pt
STRIP_GAP_MM: Final = 2.0
"""The strip of what is worn: its name, the width of a sign with its gap and its height, and the
words right of it."""
BETWEEN_MM: Final = 5.5
"""Rules and gaps between head, steps and foot."""


class Sheet:
    """The sheet of every wall chart of a handbook; what many of them share is counted once."""

    def __init__(self, content: Content) -> None:
        self._content = content
        self._notices = _notices(content)
        self._feet: dict[tuple[str, ...], float] = {}
        self._heads: dict[tuple[object, ...], float] = {}
        self._posted: dict[str, list[str]] = {}
        for each in content.handbook.posted if content.handbook else ():
            self._posted.setdefault(each.of or "", []).append(each.at)

    def room_for_steps_and_strip(self, whole: WholeProcedure, chemical_contact: str) -> float:
        """Return the height between the head and the foot, in mm.

        Args:
            whole: the procedure.
            chemical_contact: the contact that its foot names besides the first, or nothing.
        """
        asked = (chemical_contact, *self._posted.get(whole.procedure.procedure, ()))
        if asked not in self._feet:
            self._feet[asked] = _foot(self._content, *asked)
        own = whole.procedure
        about = (own.instrument, own.route, own.title, own.vessel, own.parts)
        if about not in self._heads:
            self._heads[about] = _head(self._content, whole)
        return SHEET_HEIGHT_MM - self._notices - self._heads[about] - self._feet[asked] - BETWEEN_MM


@lru_cache(maxsize=1024)
def strip_mm(worn: tuple[tuple[str, str], ...]) -> float:
    """Return the height of the strip of what is worn, in mm; its signs share the width evenly.

    Args:
        worn: what is worn, each with the steps that ask for it, or nothing.
    """
    if not worn:
        return 0
    each_mm = (SHEET_WIDTH_MM - STRIP_LABEL_MM) / len(worn) - STRIP_SIGN_MM
    room = int(each_mm / STRIP_MM_IN_SIZE * 100)
    lines = max(
        text_lines(word, room, bold=True) + (text_lines(steps, room) if steps else 0)
        for word, steps in worn
    )
    return max(STRIP_HIGH_MM, lines * STRIP_LINE_MM) + STRIP_GAP_MM


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
    said, strong = [HEAD_WORDS], [""]
    if instrument is not None:
        strong.append(instrument.model or "")
        if instrument.applies_to:
            strong.append(instrument.applies_to.marked)
        for alike in instrument.look_alikes:
            other = content.instruments.get(alike.instrument)
            strong.extend((ALIKE_WORDS, other.name if other else alike.instrument))
        if len(whole.parts) < len(instrument.parts):
            said.extend(part.shown_name for part in whole.parts)
        refused = [part.shown_name for part in instrument.parts if _never_hot(content, part)]
        if refused:
            strong.append(HEAT_WORDS)
        if len(refused) < len(instrument.parts):  # of all of them it says “it”
            strong.extend(refused)
    if procedure.vessel:
        vessel = content.vessel(procedure.vessel)
        said.append((vessel.name if vessel else None) or procedure.vessel)
    widths = [
        *(width(word) for word in " ".join(said).split(" ")),
        *(width(word, bold=True) for word in " ".join(strong).split(" ")),
    ]
    lines = lines_of((each for each in widths if each), int(wide / HEAD_MM_IN_SIZE * 100))
    titles = text_lines(title, int(wide / TITLE_MM_IN_SIZE * 100), bold=True)
    return max(LEAST_HEAD_MM if drawn else 0, titles * TITLE_LINE_MM + lines * HEAD_LINE_MM + 0.5)


def _never_hot(content: Content, part: Part) -> bool:
    """Whether some way by heat is refused for a part, so that the head may warn of it."""
    if part.immersion and part.immersion.boiling == "never":
        return True
    ways = part.survives.routes if part.survives else {}
    return any(
        stands is False and content.routes[name].kind not in {"chemical", "wiping"}
        for name, stands in ways.items()
        if name in content.routes
    )


def _foot(content: Content, chemical_contact: str, *posted_at: str) -> float:
    handbook = content.handbook
    if handbook is None:
        return 0
    said = [FOOT_WORDS, handbook.edition, handbook.responsible, handbook.title]
    rung = {chemical_contact, *(each.contact for each in handbook.contacts[:1])}
    for contact in handbook.contacts:
        if contact.contact in rung:
            said.extend(
                (contact.contact, contact.who, contact.day, contact.night, "nnnnnnnnnnnnnn")
            )
    said.extend(posted_at)
    room = int(SHEET_WIDTH_MM / FOOT_MM_IN_SIZE * 100)
    return text_lines(" ".join(said), room) * FOOT_LINE_MM
