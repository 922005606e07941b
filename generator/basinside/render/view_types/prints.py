"""Monday's paper: one sheet each, black on white, with all that must be on paper in its body."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from markupsafe import Markup

from basinside.render.view_types.learning import BlankView
from basinside.render.view_types.text import (
    FactView,
    LinkView,
    PictureView,
    Prose,
    SignView,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class ChartStepView:
    """One step of a wall chart: its short sentence, and a value large after it.

    ``danger`` is the sign of its danger; without its word it stands under the number.
    """

    number: str
    text: Prose
    safety_word: str = ""
    beside: Prose = ()
    danger: SignView | None = None
    danger_named: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class ChartStageView:
    """A stage that hangs on the line, or what follows of it in the second column."""

    name: str
    steps: tuple[ChartStepView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ChartColumnView:
    """One column of a wall chart."""

    stages: tuple[ChartStageView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class WornView:
    """Something that is worn, and the numbers of the steps that ask for it."""

    sign: SignView
    steps: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ChartView:
    """The steps of a wall chart; ``points`` is the size of their letters.

    ``worn`` is the strip above them: all that the procedure asks for.
    """

    points: int
    columns: tuple[ChartColumnView, ...]
    worn_label: str = ""
    worn: tuple[WornView, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class CardCellView:
    """One answer on a card: the amount large, how it is measured out, what truly results."""

    amount: str
    lines: tuple[str, ...] = ()
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class CardRowView:
    """One row of a card: what it is of, and an answer under each head.

    ``refusal`` stands instead of the answers and says why there is none.
    """

    label: str
    note: str = ""
    cells: tuple[CardCellView, ...]
    refusal: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class CardBlockView:
    """A part of a card.

    ``verdict`` says in words that something may not be used; ``large`` are values in large
    figures with what they are, ``rows`` a table under ``heads`` (which are only read out where the
    table above has the same), ``lines`` sentences.
    """

    heading: str
    lead: Prose = ()
    verdict: str = ""
    large: tuple[FactView, ...] = ()
    heads: tuple[str, ...] = ()
    heads_seen: bool = True
    rows: tuple[CardRowView, ...] = ()
    lines: tuple[Prose, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class FirstMinuteView:
    """What to do in the first minute after something happened.

    ``wait`` says how long, and what it is that takes so long; ``then`` what comes after.
    """

    name: str
    text: Prose
    wait: Prose = ()
    then: Prose = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class ExposureView:
    """A card of accidents: whom to ring, in large letters, and the first minute of each."""

    ring_heading: str
    ring: tuple[FactView, ...]
    happened: tuple[FirstMinuteView, ...]
    more: Prose = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelView:
    """A label to cut out: what is in the basin, and what is written on it by pen."""

    name: str
    strength: str = ""
    signs: tuple[SignView, ...] = ()
    facts: tuple[FactView, ...] = ()
    blanks: tuple[BlankView, ...] = ()
    small: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class LogColumnView:
    """A column of a log; ``width`` is its share, ``note`` says what a good entry is.

    ``each_time`` columns are filled in at each of the log's times.
    """

    head: str
    width: int
    note: str = ""
    each_time: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class LogView:
    """A log to be filled in by pen: the limits above it, its columns, its empty rows.

    ``times`` are what is read more than once in a row, such as at the start and at the end: a row
    then has a line for each of them.
    """

    limits: tuple[FactView, ...] = ()
    columns: tuple[LogColumnView, ...]
    rows: int
    times: tuple[str, ...] = ()
    notes: tuple[Prose, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class TallyUnitView:
    """One marked unit with a numbered box for each of its uses."""

    mark: str
    boxes: tuple[str, ...]
    blanks: tuple[BlankView, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class TallyView:
    """Uses of each marked unit, up to the limit; ``ends`` are signs that end its life earlier."""

    units: tuple[TallyUnitView, ...]
    ends_heading: str
    ends: tuple[FactView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetView:
    """One sheet of paper, ``print/NAME.html``.

    Exactly one of ``chart``, ``card``, ``exposure``, ``labels``, ``log`` and ``tally`` is filled.
    ``notices`` is what it has to own up to, ``foot`` what every sheet carries: edition, review,
    void after, where it hangs, whom to ring.
    """

    kind: Literal["chart", "card", "exposure", "labels", "log", "tally"]
    title: str
    lead: Prose = ()
    hint: Prose = ()
    warn: Prose = ()
    drawing: PictureView | None = None
    notices: tuple[FactView, ...] = ()
    foot: tuple[FactView, ...] = ()
    chart: ChartView | None = None
    card: tuple[CardBlockView, ...] = ()
    exposure: ExposureView | None = None
    labels: tuple[LabelView, ...] = ()
    log: LogView | None = None
    tally: TallyView | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintFileView:
    """One file with any choice of sheets, whole in itself: ``style`` is its style element."""

    title: str
    style: Markup
    sheets: tuple[SheetView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperRowView:
    """One print in the list: its page, what it is for, where it hangs."""

    link: LinkView
    hangs: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperGroupView:
    """Prints of one kind."""

    anchor: str
    heading: str
    lead: Prose = ()
    rows: tuple[PaperRowView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperIndexView:
    """``print/index.html``: all the paper of this handbook."""

    title: str
    lead: Prose
    groups: tuple[PaperGroupView, ...]
    hint: Prose = ()
