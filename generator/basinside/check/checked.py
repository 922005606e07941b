"""What every rule may ask of a handbook: its content, and what follows from it, worked out once."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from functools import cached_property

from basinside.check.item_sentences import item_sentences, item_texts
from basinside.check.item_texts import ReadItem, read_items
from basinside.check.item_words import ITEM_WORDS, ItemWords
from basinside.check.known_words import known_words
from basinside.check.named import named
from basinside.check.reading import Reader
from basinside.check.sentences import (
    Said,
    Sentence,
    key_texts,
    keys_of_items,
    said_in,
    sentences_elsewhere,
    sentences_of_procedures,
)
from basinside.check.steam_runs import SteamRun, steam_runs
from basinside.model.content import Content
from basinside.model.derived import Derived, NeededLevel, PlacedStep, WholeProcedure
from basinside.model.entry import FigureRef
from basinside.model.equipment import Route
from basinside.model.figure import Figure
from basinside.model.instrument import Instrument, Part
from basinside.model.words import CareLevel, MakesSure, Writes
from basinside.science.reading_ease import SyllableCounts


@dataclass(frozen=True, slots=True, kw_only=True)
class Sound:
    """A procedure whose instrument and route are known and whose instrument may be reused."""

    whole: WholeProcedure
    instrument: Instrument
    route: Route
    level: CareLevel

    @property
    def name(self) -> str:
        """The procedure's id."""
        return self.whole.procedure.procedure

    @property
    def level_steps(self) -> tuple[PlacedStep, ...]:
        """The steps that give the level."""
        return self.whole.level_steps


@dataclass(frozen=True, kw_only=True)
class Checked:
    """One handbook under check; ``today`` is None unless the day was given."""

    content: Content
    derived: Derived
    today: date | None = None

    @cached_property
    def sound(self) -> tuple[Sound, ...]:
        """The procedures about which rules of levels, order and chemicals can say something."""
        return tuple(
            Sound(
                whole=whole,
                instrument=whole.instrument,
                route=whole.route,
                level=whole.level,
            )
            for whole in self.derived.procedures.values()
            if whole.instrument and whole.route and whole.level
            if whole.instrument.label != "single use"
        )

    @cached_property
    def items(self) -> tuple[ReadItem, ...]:
        """Every item in file order, its texts read."""
        words = self.item_words
        return read_items(self.content, words.looked_for if words else frozenset())

    @cached_property
    def item_words(self) -> ItemWords | None:
        """The words to look for in items; None in a language that has no list."""
        handbook = self.content.handbook
        return ITEM_WORDS.get(handbook.language.partition("-")[0].casefold()) if handbook else None

    @cached_property
    def _with_tasks(self) -> dict[str, tuple[PlacedStep, ...]]:
        return {}

    def with_tasks(self, whole: WholeProcedure) -> tuple[PlacedStep, ...]:
        """Return a procedure's steps, those of a task that a step leads to (`see`) after it."""
        name = whole.procedure.procedure
        found = self._with_tasks.get(name)
        if found is None:
            steps: list[PlacedStep] = []
            for placed in whole.steps:
                steps.append(placed)
                task = self.derived.procedures.get(placed.step.see) if placed.step.see else None
                if task is not None and task.instrument is None and task is not whole:
                    steps.extend(task.steps)
            found = self._with_tasks[name] = tuple(steps)
        return found

    def assured(self, whole: WholeProcedure) -> frozenset[MakesSure]:
        """Return what a procedure makes sure of, in its own steps and in tasks they lead to."""
        return frozenset(word for each in self.with_tasks(whole) for word in each.makes_sure)

    def written(self, whole: WholeProcedure) -> frozenset[Writes]:
        """Return what a procedure writes down, in its own steps and in tasks they lead to."""
        return frozenset(word for each in self.with_tasks(whole) for word in each.writes)

    @cached_property
    def elsewhere(self) -> tuple[Sentence, ...]:
        """Every sentence that pages show outside of procedures and items."""
        return tuple(sentences_elsewhere(self.content))

    @cached_property
    def said_in_procedures(self) -> dict[str, list[Said]]:
        """What is said in each file of a procedure, for those who seldom ask where it stands."""
        return {each.place.file: said_in(each) for each in self.content.procedures.values()}

    @cached_property
    def _procedure_texts(self) -> frozenset[str]:
        said = self.said_in_procedures.values()
        return frozenset([text for each in said for _, _, text in each])

    @cached_property
    def sentences(self) -> tuple[Sentence, ...]:
        """Every sentence that pages show, of items only what is right and why."""
        return (*self._besides_items, *keys_of_items(self.content))

    @cached_property
    def sentence_texts(self) -> frozenset[str]:
        """The texts of those sentences, each once, for those who seldom ask where one stands."""
        elsewhere = (each.text for each in self.elsewhere)
        return self._procedure_texts.union(elsewhere, *self._key_texts)

    @cached_property
    def own_texts(self) -> frozenset[str]:
        """The texts of those that are the clinic's own say."""
        elsewhere = (each.text for each in self.elsewhere if each.own)
        return self._procedure_texts.union(elsewhere, self._key_texts[0])

    @cached_property
    def _key_texts(self) -> tuple[set[str], set[str]]:
        """What is right in items and why: without a situation, and with one."""
        keys: tuple[set[str], set[str]] = (set(), set())
        for read in self.items:
            found = keys[bool(read.situation)]
            for each in read.right:
                found.add(each.option.text)
                if each.because:
                    found.add(each.because)
            if not read.options_only:
                found.update(key_texts(read.item))
        return keys

    @cached_property
    def _besides_items(self) -> tuple[Sentence, ...]:
        return (*self.elsewhere, *sentences_of_procedures(self.content))

    @cached_property
    def prose(self) -> tuple[Sentence, ...]:
        """Every sentence that anybody reads, of items all."""
        return (*self._besides_items, *item_sentences(self.content))

    @cached_property
    def syllables(self) -> SyllableCounts:
        """The syllables of words, all small; those of the glossary and of names count as short."""
        return SyllableCounts(dict.fromkeys(known_words(self.content), 1))

    @cached_property
    def reader(self) -> Reader:
        """Every text of the prose, counted."""
        texts = {*self._procedure_texts, *(each.text for each in self.elsewhere)}
        texts.update(*self.item_texts.values())
        return Reader(self.content.figures, self.syllables, texts)

    @cached_property
    def item_texts(self) -> dict[str, list[str]]:
        """The texts of each file of questions, for those who seldom ask where each stands."""
        return {each.place.file: item_texts(each) for each in self.content.questions}

    @cached_property
    def named(self) -> frozenset[str]:
        """The ids of values and sources that the content refers to."""
        return named(self.content)

    @cached_property
    def steam_runs(self) -> tuple[SteamRun, ...]:
        """The procedures and tasks that run a pressure vessel."""
        handbook = self.content.handbook
        vessels = {each.vessel: each for each in handbook.clinic.vessels} if handbook else {}
        return tuple(steam_runs(self.derived.procedures.values(), self.with_tasks, vessels))

    def needed(self, instrument: Instrument, part: Part) -> NeededLevel:
        """Return the least level of a part."""
        return self.derived.instruments[instrument.instrument].needed[part.part]

    def figure(self, reference: FigureRef | None) -> Figure | None:
        """Return the value that a field refers to, or None when there is none."""
        return self.content.figures.get(reference.figure) if reference else None

    def cited(self, citation: str | None) -> str:
        """Return a citation in words: who, what, where in it; the id alone when it is unknown."""
        if not citation:
            return "no source"
        source_id, _, locator = citation.partition(" ")
        source = self.content.sources.get(source_id)
        words = f"{source.by}, {source.title}" if source else source_id
        return f"{words}, {locator}" if locator else words
