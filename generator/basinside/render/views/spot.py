"""What every view needs at hand: the model, the theme, and how addresses run from a page."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any

from markupsafe import Markup

from basinside.model.content import AskedItem, Content
from basinside.model.derived import (
    Derived,
    PlacedStep,
    RouteVerdict,
    WholeInstrument,
    WholeProcedure,
)
from basinside.model.entry import FigureRef
from basinside.model.figure import Figure
from basinside.model.instrument import Instrument
from basinside.model.prose import Words, read_prose
from basinside.model.rule_card import RuleCard
from basinside.model.waived import Waived, waived
from basinside.render.environment import Theme
from basinside.render.view_types import (
    ChromeView,
    FactView,
    FigureView,
    LinkView,
    NoteView,
    PictureView,
    Prose,
    QuestionView,
    SignView,
    SpanView,
    plain,
)
from basinside.render.wording import _


@dataclass(frozen=True, kw_only=True, eq=False)
class Desk:
    """The model on one side, the theme on the other; what is derived is derived once."""

    content: Content
    derived: Derived
    theme: Theme
    rule_cards: tuple[RuleCard, ...] = ()
    values: dict[tuple[str, str, str], SpanView] = field(default_factory=dict)
    sentences: dict[tuple[str, str], Prose] = field(default_factory=dict)
    signs: dict[tuple[str, str], tuple[str, SignView]] = field(default_factory=dict)
    frames: dict[tuple[str, str, bool], ChromeView] = field(default_factory=dict)
    questions: dict[str, tuple[QuestionView, ...]] = field(default_factory=dict)
    leads: dict[tuple[str, ...], tuple[LinkView, ...]] = field(default_factory=dict)
    large: dict[tuple[str, str, str], FigureView] = field(default_factory=dict)
    notes: dict[tuple[str, str], NoteView] = field(default_factory=dict)

    @cached_property
    def topic_titles(self) -> dict[str, str]:
        """The titles that question files give their topics, the first of each."""
        titles: dict[str, str] = {}
        for questions in self.content.questions:
            if questions.title:
                titles.setdefault(questions.topic, questions.title)
        return titles

    @cached_property
    def rules(self) -> dict[str, RuleCard]:
        """The rules by their ids; none where the pages are made without them."""
        return {each.rule: each for each in self.rule_cards}

    @cached_property
    def waived(self) -> tuple[Waived, ...]:
        """Every waiver, with the entry it is written at."""
        return waived(self.content)

    @cached_property
    def asked_about(self) -> Mapping[str, tuple[AskedItem, ...]]:
        """The self-tests' items by the step or the entry that they are about."""
        return self.content.asked_about("practice")

    @cached_property
    def asked_sentences(self) -> dict[str, str]:
        """For each sentence of a step that a self-test asks about, the first such step."""
        found: dict[str, str] = {}
        for name, whole in self.derived.procedures.items():
            for placed in whole.steps:
                if f"{name}/{placed.step.step}" in self.asked_about:
                    found.setdefault(placed.step.do, f"{name}/{placed.step.step}")
        return found

    @cached_property
    def procedures_with(self) -> dict[str, list[str]]:
        """The procedures that use each chemical: in a step, or to lubricate a part."""
        found: dict[str, dict[str, None]] = {}
        for name, whole in self.derived.procedures.items():
            oils = [part.lubricate.with_ for part in whole.parts if part.lubricate]
            for placed in whole.steps:
                step = placed.step
                used = [step.agent] if step.agent else []
                for agent in (*used, *(oils if step.action == "lubricate" else ())):
                    found.setdefault(agent, {})[name] = None
        return {agent: list(names) for agent, names in found.items()}

    @cached_property
    def steps_with(self) -> dict[str, list[tuple[str, PlacedStep]]]:
        """The steps that need each piece of equipment or work with it, and their procedures."""
        found: dict[str, list[tuple[str, PlacedStep]]] = {}
        for name, whole in self.derived.procedures.items():
            for placed in whole.steps:
                for each in dict.fromkeys((*placed.step.needs, *placed.step.with_)):
                    found.setdefault(each, []).append((name, placed))
        return found

    @cached_property
    def practice_topics(self) -> dict[str, list[AskedItem]]:
        """The practice items by topic, in file order."""
        topics: dict[str, list[AskedItem]] = {}
        for asked in self.content.items("practice"):
            topics.setdefault(asked.topic, []).append(asked)
        return topics

    @property
    def has_ways(self) -> bool:
        """Whether there is any way by which an instrument comes back, and so a shift to tick."""
        return any(each.ways for each in self.derived.shift.instruments)

    def whole(self, procedure: str) -> WholeProcedure:
        """Return a procedure with its placed steps."""
        return self.derived.procedures[procedure]

    def instrument(self, instrument: Instrument) -> WholeInstrument:
        """Return an instrument with what follows for it."""
        return self.derived.instruments[instrument.instrument]

    def verdicts(self, instrument: Instrument) -> tuple[RouteVerdict, ...]:
        """Return the verdict of each of the clinic's routes for an instrument."""
        return self.instrument(instrument).verdicts

    def practice_about(self, subject: str) -> list[AskedItem]:
        """Return the self-test items about a step (``procedure/step``) or another id."""
        return self._about.get(subject, [])

    @cached_property
    def _about(self) -> dict[str, list[AskedItem]]:
        subjects: dict[str, list[AskedItem]] = {}
        for asked in self.content.items("practice"):
            for each in asked.item.about:
                subjects.setdefault(each, []).append(asked)
        return subjects

    def watched(self, procedure: str) -> bool:
        """Whether there is anything to watch in a procedure, and so a sheet to watch it by."""
        return bool(self.derived.checklists[procedure].lines)

    def procedures_of(self, instrument: str) -> list[str]:
        """Return the ids of the procedures of an instrument."""
        return self._of_instruments.get(instrument, [])

    @cached_property
    def _of_instruments(self) -> dict[str, list[str]]:
        found: dict[str, list[str]] = {}
        for name, each in self.content.procedures.items():
            if each.instrument is not None:
                found.setdefault(each.instrument, []).append(name)
        return found


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """A page's place in the folder, and the signs that it used so far."""

    desk: Desk
    path: str
    signs: dict[str, None] = field(default_factory=dict)

    @property
    def up(self) -> str:
        """What leads from this page to the root of the folder."""
        return "../" * self.path.count("/")

    def link(self, target: str) -> str:
        """Return the address of a file of the folder (with ``#`` and all) from this page."""
        file, mark, anchor = target.partition("#")
        if file == self.path and mark:
            return f"#{anchor}"
        return self.up + target

    def prose(self, text: str | None) -> Prose:
        """Return a sentence with its values as data that lead to where they are explained."""
        if not text:
            return ()
        if "{{" not in text:
            return plain(self.words(text))
        key = (text, self._nearness)
        if key not in self.desk.sentences:
            self.desk.sentences[key] = self._read(text)
        return self.desk.sentences[key]

    def words(self, text: str) -> str:
        """Return a sentence as it is read, without what its values lead to."""
        if "{{" in text:
            return "".join(span.text for span in self.prose(text))
        return text if "\n" not in text else " ".join(text.split())

    @property
    def _nearness(self) -> str:
        """What addresses of this page depend on: how deep it lies, or that it is values.html."""
        return self.path if self.path == "values.html" else self.up

    def _read(self, text: str) -> Prose:
        spans: list[SpanView] = []
        for span in read_prose(text):
            if isinstance(span, Words):
                spans.append(SpanView(text=span.text))
                continue
            figure = self.desk.content.figures.get(span.figure)
            if figure is None:
                spans.append(SpanView(text=span.figure))
            else:
                spans.append(self.value(span.figure, figure, span.unit))
        return tuple(spans)

    def value(self, name: str, figure: Figure, unit: str = "") -> SpanView:
        """Return a value inside a sentence."""
        key = (name, unit, self._nearness)
        if key not in self.desk.values:
            shown = figure.value.in_unit(unit) if unit else figure.value
            self.desk.values[key] = SpanView(
                kind="value",
                text=shown.text(),
                machine=figure.value.base_text(),
                href=self.link(f"values.html#{name}"),
            )
        return self.desk.values[key]

    def figure(
        self,
        reference: FigureRef | None,
        caption: str = "",
        *,
        source: bool = False,
    ) -> FigureView | None:
        """Return a value shown large, or None when there is none."""
        if reference is None:
            return None
        figure = self.desk.content.figures.get(reference.figure)
        if figure is None:
            return None
        address = self.link(f"values.html#{reference.figure}")
        link = LinkView(text=_("About this value"), href=address)
        note = self.source_note(figure) if source else None
        return self.shown_figure(figure, caption or figure.is_, link, note)

    def step_figure(self, name: str, figure: Figure, caption: str) -> tuple[FigureView, NoteView]:
        """Return a value shown large at a step, and its source; the same for each like step."""
        key, place = (name, caption, self._nearness), (name, self._nearness)
        if key not in self.desk.large:
            self.desk.large[key] = self.shown_figure(figure, caption)
        if place not in self.desk.notes:
            self.desk.notes[place] = self.source_note(figure)
        return self.desk.large[key], self.desk.notes[place]

    def shown_figure(
        self,
        figure: Figure,
        caption: str,
        link: LinkView | None = None,
        note: NoteView | None = None,
    ) -> FigureView:
        """Return a value shown large with its caption."""
        return FigureView(
            numeral=figure.value.numeral(),
            unit=figure.value.unit_text(),
            machine=figure.value.base_text(),
            caption=self.prose(caption),
            link=link,
            note=note,
        )

    def value_prose(self, reference: FigureRef | None) -> Prose:
        """Return a value as a sentence of its own."""
        figure = self.desk.content.figures.get(reference.figure) if reference else None
        if figure is None or reference is None:
            return ()
        return (self.value(reference.figure, figure),)

    def citation(self, source: str | None) -> str:
        """Return ``IARC, Reference manual (2005), p.130`` for a citation."""
        if not source:
            return ""
        name, _space, place = source.partition(" ")
        entry = self.desk.content.sources.get(name)
        if entry is None:
            return source
        by = _("{by}, {title}").format(by=entry.by, title=entry.title)
        if entry.year:
            by = f"{by} ({entry.year})"
        return f"{by}, {place}" if place else by

    def basis(self, figure: Figure) -> str:
        """Return on whose word a value stands."""
        source = self.citation(figure.source)
        if not source:
            return basis_words(figure.basis)
        if figure.basis == "published":
            return source
        return _("{source} ({basis})").format(source=source, basis=basis_words(figure.basis))

    def source_note(self, figure: Figure) -> NoteView:
        """Return the source of a value, shown on demand."""
        lines = [plain(self.basis(figure))]
        if figure.checked:
            lines.append(plain(_("Checked on {day}.").format(day=day_words(figure.checked))))
        if figure.other_view:
            lines.append(self.prose(figure.other_view))
        return NoteView(summary=_("Source of this value"), lines=tuple(lines))

    def picture(self, name: str | None, alt: str, caption: str = "") -> PictureView | None:
        """Return a drawing that passed the allow-list, or None."""
        picture = self.desk.content.pictures.get(name) if name else None
        if picture is None:
            return None
        return PictureView(svg=Markup(picture.markup), alt=alt, caption=plain(caption))  # noqa: S704

    def sign(self, kind: str, word: str) -> SignView:
        """Return a safety sign with its word."""
        known = self.desk.signs.get((kind, word))
        if known is None:
            name = self.desk.theme.sign(kind, word)
            svg = self.desk.theme.placed_sign(name)
            known = name, SignView(svg=svg, word=word[:1].upper() + word[1:])
            self.desk.signs[kind, word] = known
        self.signs[known[0]] = None
        return known[1]


def fact(label: str, text: Prose | str, note: str = "") -> FactView:
    """Return a labelled fact."""
    shown = plain(text) if isinstance(text, str) else text
    return FactView(label=label, text=shown, note=plain(note))


def present(*facts: FactView | None) -> tuple[FactView, ...]:
    """Return the facts that say something."""
    return tuple(each for each in facts if each is not None and each.text)


def basis_words(basis: str) -> str:
    """Return a basis as pages say it."""
    return {
        "manufacturer": _("the maker's instructions"),
        "published": _("published"),
        "published (read second-hand)": _("published; read second-hand"),
        "computed": _("computed"),
        "local policy": _("decided in this clinic"),
        "common practice": _("common practice, no published source"),
        "from memory": _("from memory, not yet checked against a source"),
    }[basis]


def day_words(day: Any) -> str:
    """Return a day as people read it: ``20 September 2026``."""
    months = (
        _("January"),
        _("February"),
        _("March"),
        _("April"),
        _("May"),
        _("June"),
        _("July"),
        _("August"),
        _("September"),
        _("October"),
        _("November"),
        _("December"),
    )
    return f"{day.day} {months[day.month - 1]} {day.year}"


def ended(text: str) -> str:
    """Return a phrase with a full stop."""
    return text if text.endswith((".", "?", "!")) else f"{text}."


def state(text: str) -> str:
    """Return a phrase with a capital and a full stop."""
    return ended(text[:1].upper() + text[1:])
