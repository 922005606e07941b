"""Instruments: parts, what each part touches and survives, who says which level is reached."""

from __future__ import annotations

from pydantic import Field

from basinside.model.entry import (
    AtLeastOne,
    Citation,
    Decided,
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
    Contact,
    Immersion,
    Label,
    Material,
    PartKind,
    ThenWhat,
)


class Survives(Entry):
    """Which routes a part stands, and who says so."""

    source: Citation
    routes: Mapping[Id, Truth]


class Immersed(Entry):
    """How something is put under, by kind of route; one part may differ from its instrument."""

    boiling: Immersion | None = None
    chemical: Immersion | None = None


class Tools(Entry):
    """What may and may not be used on a part."""

    use: tuple[Text, ...] = ()
    never: tuple[Text, ...] = ()


class Lubricate(Entry):
    """How a part is lubricated."""

    with_: Id = Field(alias="with")
    amount: Prose
    when: Prose
    never: Text | None = None


class RetireSign(Entry):
    """A sign that a part's life is over, and what then."""

    sign: Prose
    then: ThenWhat


class LevelDecided(Decided):
    """A published level for one part that differs from its contact class, decided by name."""

    level: CareLevel
    source: Citation
    other_view: Prose


class Part(Waivable):
    """One part of an instrument."""

    part: Id
    name: Text | None = None
    kinds: tuple[PartKind, ...] = ()
    made_of: Material | None = None
    count: AtLeastOne
    lumen: Truth = False
    touches: tuple[Contact, ...]
    level_decided: LevelDecided | None = None
    survives: Survives | None = None
    tools: Tools | None = None
    lubricate: Lubricate | None = None
    immersion: Immersed | None = None
    retire_when: tuple[RetireSign, ...] = ()

    def stands(self, route: str) -> bool | None:
        """Return whether the part survives a route; None when nobody states it."""
        return self.survives.routes.get(route) if self.survives else None

    @property
    def shown_name(self) -> str:
        """The name on pages."""
        return self.name or self.part.replace("-", " ")


class Reaches(Entry):
    """Who says that a route brings this instrument to a level."""

    level: CareLevel
    source: Citation


class InstructionsHeld(Entry):
    """Where the maker's instructions are kept, and in which languages."""

    where: Text
    languages: tuple[Text, ...]


class AppliesTo(Entry):
    """How to see that this is the model the page is about."""

    marked: Prose


class LookAlike(Entry):
    """Another instrument that looks the same, and how to tell them apart."""

    instrument: Id
    tell_apart: Prose


class KeepMoist(Entry):
    """What may keep the instrument moist until it is cleaned, and what never."""

    use: tuple[Text, ...]
    never: tuple[Text, ...] = ()


class TestLine(Entry):
    """One line of the function test; ``tests`` are the parts whose working it shows."""

    __test__ = False

    do: Prose
    tests: tuple[Id, ...] = ()
    wait: FigureRef | None = None
    expect: Prose
    if_not: Prose


class UseLimit(Entry):
    """How many uses, and what counts as one."""

    at: FigureRef
    counts: Prose


class Instrument(Waivable):
    """An instrument that the clinic owns or may find on its shelves."""

    instrument: Id
    variant_of: Id | None = None
    name: Text
    model: Text | None = None
    label: Label
    found_on_the_shelf: Prose | None = None
    instructions_held: InstructionsHeld | None = None
    applies_to: AppliesTo | None = None
    look_alikes: tuple[LookAlike, ...] = ()
    units: tuple[Text, ...] = ()
    parts: tuple[Part, ...] = ()
    reaches: Mapping[Id, Reaches] = {}
    immersion: Immersed | None = None
    keep_moist_with: KeepMoist | None = None
    take_apart: tuple[Id, ...] = ()
    function_test: tuple[TestLine, ...] = ()
    use_limit: UseLimit | None = None
    at_use: Mapping[Id, CareLevel] = {}
    drawing: Text | None = None
    assembled: Text | None = None

    def part_named(self, part: str) -> Part | None:
        """Return the part with that id."""
        return next((each for each in self.parts if each.part == part), None)
