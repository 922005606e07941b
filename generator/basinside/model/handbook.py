"""``content/handbook.yaml``: the clinic, its edition, its people by role, and its policy."""

from __future__ import annotations

from pydantic import Field

from basinside.model.entry import (
    Amount,
    Count,
    Day,
    Decided,
    EditionId,
    Entry,
    FigureRef,
    Id,
    Mapping,
    OneOrMore,
    Prose,
    Text,
    Waivable,
)
from basinside.model.words import RegulatorKind, Side, VesselKind


class Contact(Entry):
    """Whom to ring, by day and by night."""

    contact: Id
    who: Text
    day: Text
    night: Text


class HouseMeasure(Entry):
    """A jug, spoon or syringe that the clinic owns."""

    jug: Amount | None = None
    syringe: Amount | None = None
    spoon: Amount | None = None
    cup: Amount | None = None
    bucket: Amount | None = None
    marks: Amount | None = None


class Regulator(Entry):
    """What holds a vessel's pressure."""

    kind: RegulatorKind
    marked_working_pressure: Amount | None = None
    lifts_at: Amount | None = None


class Vessel(Entry):
    """A pressure vessel or oven that the clinic owns."""

    vessel: Id
    name: Text | None = None
    kind: VesselKind
    regulator: Regulator | None = None


class Emergency(Decided):
    """What to do when nothing is permitted and the instrument cannot wait.

    ``for`` names the instruments; the one that is named in the first rule comes first on pages.
    """

    for_: tuple[Id, ...] = Field(default=(), alias="for")
    when: Prose
    do: Prose


class EyeFlush(Entry):
    """A place where eyes are rinsed, and with what."""

    at: Text
    with_: Id = Field(alias="with")


class NotAvailable(Entry):
    """What is done instead of something that cannot be had, since when, and who was asked."""

    instead: Prose
    since: Day
    asked_for: Prose


class SporeTest(Entry):
    """How often a biological indicator is run, or what is done without one."""

    every: FigureRef | None = None
    not_available: NotAvailable | None = None


class WorkPlace(Entry):
    """Where work is done: dirty, clean, or both at different times with a wipe between."""

    work: Text
    side: Side
    between: Prose | None = None


class Clinic(Entry):
    """Where the clinic lies and what it has."""

    altitude: Amount
    measures: tuple[HouseMeasure, ...] = ()
    vessels: tuple[Vessel, ...] = ()
    has: tuple[Id, ...] = ()
    cases_per_year: Mapping[Id, Count] = {}
    ready_reserve: Mapping[Id, Count] = {}
    emergency: tuple[Emergency, ...] = ()
    eye_flush: tuple[EyeFlush, ...] = ()
    spore_test: SporeTest | None = None
    places: tuple[WorkPlace, ...] = ()


class Reading(Entry):
    """How hard sentences may be: words in one, and years of school (Flesch and Kincaid)."""

    words: Count = 20
    grade: Count = 8


class Posted(Entry):
    """A print that hangs somewhere."""

    print: Id
    of: Id | None = None
    at: Text


class KnowledgeNeed(Entry):
    """Which assessment must be passed, and how old it may be."""

    assessment: Id
    not_older_than: Amount | None = None


class PracticeNeed(Entry):
    """How often someone must have been watched, per procedure."""

    runs: Count
    of_which_real: Count = 0
    by_observers: Count = 1
    on_days: Count = 1
    not_older_than: Amount | None = None


class WayBack(Entry):
    """What is asked of somebody whose record lapsed."""

    runs: Count
    of_which_real: Count = 0


class PolicyLine(Entry):
    """One line of the policy; a later match replaces only what it writes."""

    scope: OneOrMore[Id]
    knowledge: KnowledgeNeed | None = None
    after_last_attempt: Prose | None = None
    practice: PracticeNeed | None = None
    lasts: Amount | None = None
    lapses_if_not_done_for: Amount | None = None
    way_back: WayBack | None = None


class Handbook(Waivable):
    """The handbook's own card."""

    handbook: Id
    title: Text
    edition: EditionId
    issued: Day
    review_by: Day
    language: Text
    languages_read: tuple[Text, ...] = ()
    responsible: Text
    contacts: tuple[Contact, ...] = ()
    clinic: Clinic
    posted: tuple[Posted, ...] = ()
    avoid_words: tuple[Text, ...] = ()
    reading: Reading | None = None
    who_signs: tuple[Text, ...] = ()
    retention: Amount | None = None
    scopes: Mapping[Id, tuple[Id, ...]] = {}
    policy: tuple[PolicyLine, ...] = ()
    demonstration: Text | None = None
