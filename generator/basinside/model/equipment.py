"""Chemicals (agents in YAML), routes, equipment and incidents."""

from __future__ import annotations

from pydantic import Field

from basinside.model.entry import (
    Amount,
    Entry,
    FigureRef,
    Id,
    Mapping,
    Prose,
    Text,
    Truth,
    Waivable,
)
from basinside.model.words import (
    CareLevel,
    EquipmentKind,
    Family,
    Hazard,
    IncidentKind,
    ProductKind,
    RouteKind,
    Worn,
)


class LabelSays(Entry):
    """What the label of the product held asks for, which goes before a general value."""

    hold: FigureRef | None = None
    temperature: FigureRef | None = None
    life: FigureRef | None = None
    at_least: FigureRef | None = None


class Product(Entry):
    """The product as it stands on the shelf."""

    kind: ProductKind
    strength: Amount | None = None
    label_says: LabelSays | None = None


class StrengthCheck(Entry):
    """How the strength of a bath is checked, and when."""

    how: Prose
    at_least: FigureRef | None = None


class Agent(Waivable):
    """A chemical: what it is, how it hurts, what it must never meet."""

    agent: Id
    name: Text
    family: Family
    product: Product | None = None
    hazards: tuple[Hazard, ...] = ()
    statements: tuple[Text, ...] = ()
    prepare: Prose | None = None
    wear: tuple[Worn, ...] = ()
    ventilation: Prose | None = None
    first_aid: tuple[Id, ...] = ()
    life: FigureRef | None = None
    stock_life: FigureRef | None = None
    air_limit: FigureRef | None = None
    strength_check: StrengthCheck | None = None
    waste: Prose | None = None
    never_with: tuple[Family, ...] = ()
    harms: Prose | None = None
    who_asks_first: tuple[Text, ...] = ()
    source: Text | None = None


class Route(Waivable):
    """One way to bring an instrument to the level it needs."""

    route: Id
    name: Text
    level: CareLevel
    kind: RouteKind
    wrapped: Truth | None = None
    short_cycle: Truth = False
    temperature: FigureRef | None = None
    hold: FigureRef | None = None
    agent: Id | None = None
    strength: FigureRef | None = None
    needs: tuple[Id, ...] = ()


class Equipment(Waivable):
    """A tool, container or supply that steps and routes need.

    What has a ``kind`` is asked for at the beginning of a shift by every procedure that uses it;
    what has none, only by the routes that need it. A ``vessel`` is asked for as the clinic's own.
    ``processed``: boiled or sterile before it touches what is. ``only_for``: the chemicals that
    may be in it; none named, any. ``holds``: up to its line. ``wraps_for``: the kinds of route
    that pass through it.
    """

    name: Text
    kind: EquipmentKind | None = None
    processed: Truth = False
    pointed: Truth = False
    metal: Truth = False
    lid: Truth = False
    holds: Amount | None = None
    only_for: tuple[Id, ...] = ()
    wraps_for: tuple[RouteKind, ...] = ()
    note: Prose | None = None


class Word(Entry):
    """A word of the trade: what it means, what else it is called, what it is taken for."""

    word: Text
    means: Prose
    also: tuple[Text, ...] = ()
    not_: Prose | None = Field(default=None, alias="not")


class WordFile(Entry):
    """``content/words.yaml``."""

    words: Mapping[Id, Word]


class EquipmentFile(Entry):
    """``content/equipment.yaml``."""

    equipment: Mapping[Id, Equipment]


class Incident(Waivable):
    """What to do when something went wrong."""

    incident: Id
    name: Text
    kinds: tuple[IncidentKind, ...] = ()
    first_minute: Prose
    wait: FigureRef | None = None
    then: Prose
    contact: Id | None = None
    within: FigureRef | None = None
    source: Text | None = None


class IncidentFile(Entry):
    """``content/incidents.yaml``."""

    incidents: tuple[Incident, ...]
