"""What a calculator is given and what it answers, as values: no words but those of the content.

A sentence is a code with what fills its holes; ``render`` makes the words, and the page's script
takes the very same ones. Numbers are plain decimals as they are shown. ``data()`` gives the shape
that the page has too, so that both sides can be compared exactly.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType
from typing import Any, Final, Literal, NamedTuple, TypeAlias, get_args

from basinside.units import UNITS

AmountKind = Literal[
    "liquid", "powder", "tablets", "boiling", "gauge", "out-time", "discard", "load", "sets"
]
OVEN: Final = "dry heat oven"
AMOUNT_KINDS: Final[tuple[AmountKind, ...]] = get_args(AmountKind)

Typed: TypeAlias = dict[str, str]
"""What somebody typed, by field, as it was typed."""


class Dial(NamedTuple):
    """A unit of a gauge: how many kPa one is worth, and what a vessel's plate may say in it."""

    kpa: Fraction
    low: str
    high: str


DIALS: Final = MappingProxyType(
    {
        unit: Dial(UNITS[f"{unit} gauge"].factor / 1000, low, high)
        for unit, low, high in (
            ("kPa", "10", "400"),
            ("bar", "0.1", "4"),
            ("psi", "1", "60"),
            ("kgf/cm²", "0.1", "4"),
        )
    }
)
"""The units of gauges that are seen on vessels (the bounds are our own)."""

_CHLORINE_CAUTIONS = ("gas", "burns", "water-first", "plastic", "strip")

CAUTIONS: Final[dict[AmountKind, tuple[str, ...]]] = {
    "liquid": _CHLORINE_CAUTIONS,
    "powder": (*_CHLORINE_CAUTIONS, "fire", "settle"),
    "tablets": (*_CHLORINE_CAUTIONS, "whole-tablets"),
    "boiling": ("scald", "not-sterile", "instruments-only"),
    "gauge": ("steady-steam", "never-above-mark", "never-alter"),
    "out-time": ("wall-clock", "interrupted"),
    "discard": ("whichever-first", "strip"),
    "load": ("release", "between-readings", "no-f0"),
    "sets": ("least-number",),
}
"""What stands beside every answer of a kind, whatever was typed."""

SOURCES: Final[dict[AmountKind, tuple[str, ...]]] = {
    "liquid": ("cdc-appendix-e", "house-measures"),
    "powder": ("cdc-appendix-e",),
    "tablets": ("who-table-12",),
    "boiling": ("icao-atmosphere", "iapws-if97", "iarc-boiling"),
    "gauge": ("icao-atmosphere", "iapws-if97"),
    "out-time": ("wall-clock",),
    "discard": ("calendar",),
    "load": ("held-cycle",),
    "sets": ("sets-in-turn",),
}
"""Which sources the arithmetic of a kind has, by code; those of the clinic's values are theirs."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """A sentence: its code, and what fills its holes."""

    code: str
    holes: tuple[tuple[str, str], ...] = ()

    def data(self) -> list[Any]:
        """Return the sentence as the page has it."""
        return [self.code, dict(self.holes)]


def said(code: str, **holes: str) -> Said:
    """Return a sentence with its holes filled."""
    return Said(code=code, holes=tuple(holes.items()))


@dataclass(frozen=True, slots=True, kw_only=True)
class Amount:
    """One number of an answer with its unit (by its symbol, or a code), and what it is of."""

    number: str
    unit: str
    of: Said

    def data(self) -> dict[str, Any]:
        """Return the amount as the page has it."""
        return {"number": self.number, "unit": self.unit, "of": self.of.data()}


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """What a calculator says.

    ``inputs`` echo what was reckoned with. The first of ``amounts`` is the answer, the others go
    with it; ``measured`` says how it is measured out in the house's own measures, and
    ``strength`` what truly results, in % available chlorine. ``refusal`` says why there is no
    answer; ``would_do`` what would do instead. ``cautions`` and ``sources`` are codes.
    """

    kind: AmountKind
    inputs: tuple[Said, ...] = ()
    amounts: tuple[Amount, ...] = ()
    measured: tuple[Said, ...] = ()
    strength: str = ""
    working: tuple[Said, ...] = ()
    cautions: tuple[str, ...] = ()
    sources: tuple[str, ...] = ()
    refusal: Said | None = None
    would_do: tuple[Said, ...] = ()

    @property
    def holds(self) -> bool:
        """Whether it was answered, and a load that was asked about was held."""
        return self.refusal is None and not self.would_do

    def data(self) -> dict[str, Any]:
        """Return the answer as the page has it."""
        return {
            "kind": self.kind,
            "inputs": [each.data() for each in self.inputs],
            "amounts": [each.data() for each in self.amounts],
            "measured": [each.data() for each in self.measured],
            "strength": self.strength,
            "working": [each.data() for each in self.working],
            "cautions": list(self.cautions),
            "sources": list(self.sources),
            "refusal": self.refusal.data() if self.refusal else None,
            "would_do": [each.data() for each in self.would_do],
        }


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnMeasure:
    """A measure of the house, in mL (``g`` when ``by_weight``); ``marks`` is empty without any."""

    name: str
    holds: str
    marks: str = ""
    by_weight: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnVessel:
    """A vessel of the clinic; ``limit`` is the most that its gauge may show, in kPa, or empty."""

    vessel: str
    name: str
    kind: str
    limit: str
    weight: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnHold:
    """A time that the clinic holds something, and after how long it must be out, in seconds."""

    figure: str
    name: str
    seconds: int
    longest: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnLife:
    """How long a mixed solution of the clinic lives, in civil days or months."""

    agent: str
    name: str
    number: int
    unit: Literal["day", "month"]


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnStrength:
    """A strength that the clinic uses, in % available chlorine."""

    figure: str
    name: str
    percent: str


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnSets:
    """An instrument that is used again: cases a year, reserve, minutes until it is ready again."""

    instrument: str
    name: str
    cases_a_year: int
    reserve: int
    turnaround: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Heights:
    """Boiling and steam by altitude, every ``step`` metres, each rounded to the safe side.

    ``boils`` in tenths of a °C, rounded down; ``air`` in tens of Pa, rounded down; ``steam`` in
    tens of Pa, absolute, for each whole °C from ``lowest_celsius``, rounded up.
    """

    step: int
    highest: int
    boils: tuple[int, ...]
    air: tuple[int, ...]
    lowest_celsius: int
    steam: tuple[int, ...]

    def data(self) -> dict[str, Any]:
        """Return the table as the page has it."""
        return {
            "step": self.step,
            "highest": self.highest,
            "boils": list(self.boils),
            "air": list(self.air),
            "lowest_celsius": self.lowest_celsius,
            "steam": list(self.steam),
        }


@dataclass(frozen=True, slots=True, kw_only=True)
class Ground:
    """What this clinic's calculators stand on; an empty text is a gap."""

    altitude: str
    liquid: str
    powder: str
    tablet_grams: str
    bath_litres: str
    boil_minutes: str
    enough_celsius: str
    steam_celsius: str
    steam_minutes: str
    strengths: tuple[OwnStrength, ...]
    measures: tuple[OwnMeasure, ...]
    vessels: tuple[OwnVessel, ...]
    holds: tuple[OwnHold, ...]
    lives: tuple[OwnLife, ...]
    sets: tuple[OwnSets, ...]
    heights: Heights

    def data(self) -> dict[str, Any]:
        """Return what the page's script reckons with; what only forms show is not among it."""
        return {
            "liquid": self.liquid,
            "powder": self.powder,
            "tablet_grams": self.tablet_grams,
            "boil_minutes": self.boil_minutes,
            "enough_celsius": self.enough_celsius,
            "measures": [
                [each.name, each.holds, each.marks, each.by_weight] for each in self.measures
            ],
            "vessels": [
                [each.vessel, each.name, each.kind == OVEN, each.limit, each.weight]
                for each in self.vessels
            ],
            "holds": [[each.figure, each.seconds, each.longest] for each in self.holds],
            "lives": [[each.agent, each.number, each.unit] for each in self.lives],
            "heights": self.heights.data(),
            "dials": {
                unit: [str(dial.kpa.numerator), str(dial.kpa.denominator), dial.low, dial.high]
                for unit, dial in DIALS.items()
            },
            "cautions": {name: list(codes) for name, codes in CAUTIONS.items()},
            "sources": {name: list(codes) for name, codes in SOURCES.items()},
        }


@dataclass(frozen=True, slots=True, kw_only=True)
class Usual:
    """One of the clinic's usual questions with its answer; ``about`` says which, by id."""

    about: tuple[str, ...]
    typed: tuple[tuple[str, str], ...]
    answer: Answer


@dataclass(frozen=True, slots=True, kw_only=True)
class Amounts:
    """The clinic's calculators: what they stand on, and its usual amounts by kind."""

    ground: Ground
    usual: tuple[Usual, ...]

    def of(self, kind: AmountKind) -> tuple[Usual, ...]:
        """Return the usual questions of one kind."""
        return tuple(each for each in self.usual if each.answer.kind == kind)
