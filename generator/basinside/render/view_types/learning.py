"""The first page, self-tests, the observation sheet, and the page that examines a record."""

from __future__ import annotations

from dataclasses import dataclass

from basinside.render.view_types.answers import MatchView, NumberView, OrderView
from basinside.render.view_types.procedure import FlowView
from basinside.render.view_types.text import FactView, LinkView, PictureView, Prose


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchItemView:
    """One instrument of the clinic, drawn, with the words that tell it from the next."""

    name: str
    note: str
    href: str
    state_word: str = ""
    picture: PictureView | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class StartView:
    """``index.html``: what do you want to do, and the instruments of this clinic."""

    title: str
    lead: Prose
    flow: FlowView | None = None
    jobs_label: str
    jobs: tuple[LinkView, ...]
    bench_heading: str
    bench_note: str = ""
    bench: tuple[BenchItemView, ...]
    around_heading: str = ""
    around: tuple[LinkView, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class PlaceView:
    """A place that a script fills: its id, its accessible name, and what stands there without.

    ``component`` names the script's start; ``data`` is the id of its inline JSON.
    """

    anchor: str
    component: str
    data: str = ""
    label: str
    without_script: Prose


@dataclass(frozen=True, slots=True, kw_only=True)
class OptionView:
    """One option of a question as it is read without a script: verdict in a word, and why."""

    text: Prose
    verdict: str
    because: Prose


@dataclass(frozen=True, slots=True, kw_only=True)
class BuiltOnView:
    """What was published that a question was built on; shown with the answer, never before."""

    word: str
    says: Prose
    source: Prose


@dataclass(frozen=True, slots=True, kw_only=True)
class QuestionView:
    """One question as it is read without a script; its key stands behind ``reveal``.

    It has options, or one of ``order``, ``amount`` and ``match``.
    """

    anchor: str
    number: str
    situation: Prose = ()
    stem: Prose
    options: tuple[OptionView, ...] = ()
    order: OrderView | None = None
    amount: NumberView | None = None
    match: MatchView | None = None
    reveal: str
    built_on: BuiltOnView | None = None
    lead_back: tuple[LinkView, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class SelfTestView:
    """``self-tests/TOPIC.html``. ``questions`` stand in a noscript element."""

    title: str
    lead: Prose
    facts: tuple[FactView, ...] = ()
    place: PlaceView
    questions_heading: str = ""
    questions: tuple[QuestionView, ...] = ()
    related_heading: str = ""
    related: tuple[LinkView, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class SelfTestIndexView:
    """The list of self-tests; each link's note says how many questions."""

    title: str
    lead: Prose
    topics: tuple[LinkView, ...]
    place: PlaceView | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ExamineView:
    """``examine.html``: what the page can say of a record, and what it cannot."""

    title: str
    lead: Prose
    place: PlaceView
    limits_heading: str = ""
    limits: tuple[Prose, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class BlankView:
    """Something to be filled in by pen; ``width`` is a share of the line from 1 to 4."""

    label: str
    width: int = 1
    ticks: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class ObservationLineView:
    """One line to watch; ``safety_word`` names the safety step of the procedure, if it is one."""

    number: str
    see: Prose
    safety_word: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class ObservationStageView:
    """The lines of one stage."""

    name: str
    lines: tuple[ObservationLineView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ObservationSheetView:
    """``print/observation-ID.html``: one side of A4 or Letter, to tick and to sign.

    ``verdicts`` head the boxes of each line; ``why`` heads the room for words beside them.
    """

    title: str
    lead: Prose
    print_hint: Prose = ()
    head: tuple[BlankView, ...]
    number_word: str
    see_word: str
    verdicts: tuple[str, ...]
    why: str
    stages: tuple[ObservationStageView, ...]
    cues_heading: str = ""
    cues: tuple[Prose, ...] = ()
    foot: tuple[BlankView, ...]
    notes: tuple[Prose, ...] = ()
