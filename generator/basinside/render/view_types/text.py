"""Words as they stand on a page: sentences, links, facts, notes; nothing left to decide.

No field is called ``items``, ``values``, ``keys``, ``get`` or ``copy``: templates also place
plain mappings (the components' examples), whose methods have these names.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from markupsafe import Markup


@dataclass(frozen=True, slots=True, kw_only=True)
class SpanView:
    """A run of a sentence.

    ``text`` is what is read. A ``value`` carries ``machine``, the same quantity in its base unit
    (``1200 s``), and may carry ``href``, the place where the value is explained. A ``link``
    carries ``href``. What is ``typed`` is what an author writes in a file.
    """

    kind: Literal["text", "value", "link", "typed"] = "text"
    text: str
    machine: str = ""
    href: str = ""


Prose = tuple[SpanView, ...]
"""One sentence or more, in order; empty when there is nothing to say."""


@lru_cache(maxsize=4_096)
def plain(text: str) -> Prose:
    """Return a sentence that refers to nothing; nothing for an empty text."""
    return (SpanView(text=text),) if text else ()


@dataclass(frozen=True, slots=True, kw_only=True)
class LinkView:
    """A link in words; ``href`` is relative to the page, ``note`` stands beside it, small."""

    text: str
    href: str
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class FactView:
    """A word with what belongs to it, such as ``Least level`` and ``sterile``."""

    label: str
    text: Prose
    note: Prose = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class NoteView:
    """Something that is shown on demand: the line to press and the lines behind it."""

    summary: str
    lines: tuple[Prose, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SignView:
    """A safety sign or a hazard pictogram with the word that says the same."""

    svg: Markup
    word: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PictureView:
    """A drawing that passed the allow-list; ``alt`` says what is to be seen, or is empty.

    An empty ``alt`` marks a drawing that only repeats the words beside it.
    """

    svg: Markup
    alt: str = ""
    caption: Prose = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class FigureView:
    """A value shown large: ``numeral`` and ``unit`` apart, ``machine`` in its base unit.

    ``caption`` says what it is, ``link`` leads to the value's own place, ``note`` holds its
    basis and source on demand.
    """

    numeral: str
    unit: str
    machine: str
    caption: Prose = ()
    link: LinkView | None = None
    note: NoteView | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class DecidedView:
    """What this clinic does, in one line: ``word`` is ``Here``; ``link`` leads to who chose it."""

    word: str
    text: Prose
    link: LinkView | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class PastView:
    """A word that the page's script shows once a day is past: a built page has no clock.

    ``after`` is the last good day, as ``2026-11-20``.
    """

    word: str
    after: str


@dataclass(frozen=True, slots=True, kw_only=True)
class WaiverView:
    """A rule that does not hold here, by name: why, who agreed, until when.

    ``past`` says that it has ended; ``where`` leads to what it is about, where it stands apart.
    """

    word: str
    because: Prose
    facts: tuple[FactView, ...]
    past: PastView | None = None
    where: LinkView | None = None
