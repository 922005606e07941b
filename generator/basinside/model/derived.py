"""What follows from the model, as values: filled by ``derive/``, read by every later stage."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any, Literal, NamedTuple

from basinside.model.amounts import Amounts, OwnMeasure
from basinside.model.entry import FigureRef
from basinside.model.equipment import Agent, Route
from basinside.model.handbook import KnowledgeNeed, PracticeNeed, Vessel, WayBack
from basinside.model.instrument import Instrument, LevelDecided, Part, Reaches
from basinside.model.procedure import Danger, Hold, Procedure, Stage, Step
from basinside.model.shift import Shift
from basinside.model.wall_chart import WallChart
from basinside.model.words import Action, CareLevel, Contact, MakesSure, Worn, Writes
from basinside.quantity import Quantity

SoilState = Literal["soiled", "clean", "processed"]

LEVEL_STAGES = frozenset({"disinfection", "sterilization"})


@dataclass(frozen=True, slots=True, kw_only=True)
class NeededLevel:
    """The least level of one part: by its gravest contact, unless decided by name."""

    part: Part
    contact: Contact
    by_contact: CareLevel
    level: CareLevel
    decided: LevelDecided | None


@dataclass(frozen=True, slots=True, kw_only=True)
class VesselReach:
    """How hot a vessel gets here, or that it cannot be known.

    Temperatures in degrees Celsius, pressures in kPa above the air outside.
    """

    vessel: Vessel
    limit_kpa: float | None
    reached_celsius: float | None

    def reaches(self, celsius: float) -> bool | None:
        """Whether the vessel reaches a temperature; None when its limit is not stated."""
        return None if self.reached_celsius is None else self.reached_celsius >= celsius


ReasonKind = Literal[
    "single-use",
    "part-not-survive",
    "part-not-stated",
    "no-evidence",
    "level-too-low",
    "no-vessel",
    "vessel-too-cool",
]


@dataclass(frozen=True, slots=True, kw_only=True)
class Reason:
    """One reason why a route is refused: the part, the property, and who says so."""

    kind: ReasonKind
    part: Part | None = None
    source: str = ""
    needed: CareLevel | None = None
    reached: CareLevel | None = None
    vessel: VesselReach | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class RouteVerdict:
    """Whether one route may be used for one instrument here.

    ``fit`` are the parts against which nothing speaks; none when the whole route is out.
    """

    instrument: Instrument
    route: Route
    level: CareLevel
    reaches: Reaches | None
    reasons: tuple[Reason, ...]
    fit: tuple[Part, ...] = ()
    vessels: tuple[VesselReach, ...] = ()

    @property
    def permitted(self) -> bool:
        """Whether nothing speaks against the route."""
        return not self.reasons

    @property
    def partly(self) -> bool:
        """Whether the route may be used for some parts (``fit``) and not for the others."""
        return bool(self.reasons and self.fit)


class PlacedStep(NamedTuple):
    """A step in its procedure, with its soil state before and after.

    ``is_level_step``: whether it is the one that gives the level. What follows in the list is the
    step's own, kept close by since rules ask it of every step of a handbook.
    """

    number: int
    stage: Stage
    step: Step
    before: SoilState
    after: SoilState
    agent: Agent | None
    wear: tuple[Worn, ...]
    is_level_step: bool
    action: Action
    danger: Danger | None
    hold: Hold | None
    temperature: FigureRef | None
    in_: str | None
    with_: tuple[str, ...]
    makes_sure: tuple[MakesSure, ...]
    writes: tuple[Writes, ...]


@dataclass(frozen=True, kw_only=True)
class WholeProcedure:
    """A procedure with its instrument, its route and its placed steps; gaps are None.

    ``level`` is what its route reaches on its instrument; ``actions`` are what is done in each
    step, ``level_steps`` those that give the level. What only pages need is made on first use.
    """

    procedure: Procedure
    instrument: Instrument | None
    route: Route | None
    parts: tuple[Part, ...]
    steps: tuple[PlacedStep, ...]
    level: CareLevel | None
    find_times: Callable[[], tuple[Quantity, tuple[Quantity | None, ...]]]
    actions: tuple[Action, ...] = field(init=False)
    level_steps: tuple[PlacedStep, ...] = field(init=False)

    def __post_init__(self) -> None:
        actions = tuple([placed.action for placed in self.steps])
        level_steps = tuple([placed for placed in self.steps if placed.is_level_step])
        object.__setattr__(self, "actions", actions)
        object.__setattr__(self, "level_steps", level_steps)

    def first(self, action: Action) -> PlacedStep | None:
        """Return the first step in which that is done, or None."""
        return self.steps[self.actions.index(action)] if action in self.actions else None

    @cached_property
    def _times(self) -> tuple[Quantity, tuple[Quantity | None, ...]]:
        return self.find_times()

    @property
    def about(self) -> Quantity:
        """About how long it takes."""
        return self._times[0]

    @property
    def stages_about(self) -> tuple[Quantity | None, ...]:
        """About how long each of its stages takes, None for one without steps."""
        return self._times[1]


@dataclass(frozen=True, slots=True, kw_only=True)
class WholeInstrument:
    """An instrument with the level each part needs and the verdict of each of our routes."""

    instrument: Instrument
    needed: Mapping[str, NeededLevel]
    highest: CareLevel
    gravest: Contact
    verdicts: tuple[RouteVerdict, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ChecklistLine:
    """One line to watch: a safety step, or something that only an author can add."""

    line: str
    text: str
    placed: PlacedStep | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Checklist:
    """The observation checklist of one procedure."""

    procedure: str
    lines: tuple[ChecklistLine, ...]
    cues: tuple[str, ...]
    who_may_observe: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Scope:
    """What a record can cover: one procedure or a named group, with its digest."""

    id: str
    procedures: tuple[str, ...]
    digest: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Policy:
    """What is asked before a record may be signed for a scope; absent lines are None."""

    knowledge: KnowledgeNeed | None = None
    after_last_attempt: str | None = None
    practice: PracticeNeed | None = None
    lasts: Quantity | None = None
    lapses_if_not_done_for: Quantity | None = None
    way_back: WayBack | None = None


ChangeKind = Literal[
    "value-changed",
    "value-new",
    "value-gone",
    "procedure-new",
    "procedure-gone",
    "step-changed",
    "step-reworded",
    "step-new",
    "step-gone",
    "steps-moved",
    "choice-changed",
    "choice-new",
    "choice-gone",
    "basis-changed",
    "source-changed",
    "source-new",
    "source-gone",
    "scope-changed",
    "item-new",
    "item-gone",
    "item-reworded",
    "item-key",
    "item-rests-on",
    "item-values",
    "item-steps",
    "assessment-changed",
    "assessment-new",
    "assessment-gone",
    "assessment-items",
    "print-anew",
    "print-new",
    "print-gone",
]


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """One thing that differs between editions: where, which member of it, before and after."""

    kind: ChangeKind
    id: str
    member: str = ""
    old: Any = None
    new: Any = None
    safety: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class SinceClosed:
    """What differs now from a closed edition; ``same`` when nothing that counts does."""

    changes: tuple[Change, ...]
    same: bool

    def of_step(self, path: str) -> tuple[Change, ...]:
        """Return what changed in the meaning of one step (``procedure/step``)."""
        return tuple(
            each
            for each in self.changes
            if (each.id == path and each.kind in {"step-changed", "step-new"})
            or (each.kind == "procedure-new" and each.id == path.partition("/")[0])
        )


@dataclass(frozen=True, kw_only=True)
class Derived:
    """Everything that pages and rules need and that follows from the model.

    ``since`` holds the closed editions that somebody asks about: the one whose id the handbook
    has, and those in which an item was read. ``too_long`` holds the wall charts that are not sure
    to fit on their sheet. What only pages need is made when it is first asked for.
    """

    procedures: Mapping[str, WholeProcedure]
    instruments: Mapping[str, WholeInstrument]
    vessels: Mapping[str, VesselReach]
    checklists: Mapping[str, Checklist]
    plans: Mapping[str, Mapping[str, Any]]
    since: Mapping[str, SinceClosed]
    wall_charts: Mapping[str, WallChart]
    measures: tuple[OwnMeasure, ...]
    make_amounts: Callable[[], Amounts]
    make_shift: Callable[[], Shift]
    find_too_long: Callable[[], Mapping[str, WallChart]]

    @cached_property
    def amounts(self) -> Amounts:
        """The clinic's calculators, with its usual questions answered."""
        return self.make_amounts()

    @cached_property
    def shift(self) -> Shift:
        """What a shift is asked for, and what each way back to the shelf needs of it."""
        return self.make_shift()

    @cached_property
    def too_long(self) -> Mapping[str, WallChart]:
        """The wall charts that are not sure to fit on their sheet."""
        return self.find_too_long()
