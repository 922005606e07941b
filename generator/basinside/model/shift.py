"""What a shift is asked for, and what each way back to the shelf needs of it.

Whether a way is open now is decided in the page, from ticks, against exactly this.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from basinside.model.equipment import Agent, Route
from basinside.model.handbook import Emergency
from basinside.model.instrument import Instrument, Part
from basinside.model.procedure import Procedure
from basinside.model.words import EquipmentKind
from basinside.quantity import Quantity

NeedGroup = Literal[EquipmentKind, "chemical", "other"]


@dataclass(frozen=True, slots=True, kw_only=True)
class ShiftNeed:
    """Something that works this shift, or does not.

    ``id`` says of what it is and which: ``equipment/stove``, ``worn/apron``, ``water/drinking``,
    ``agent/detergent``.
    """

    id: str
    group: NeedGroup


@dataclass(frozen=True, slots=True, kw_only=True)
class ShiftBath:
    """A bath of one chemical route: how long it lives, what is measured, who says how to make it.

    ``days`` are the whole days of its life, the day it was made not counted; None when nothing
    is said, and then its day is not asked. ``within_a_day`` marks a life shorter than that day.
    ``least`` is the lowest temperature that a step or the route asks of it.
    """

    route: Route
    agent: Agent | None
    days: int | None
    within_a_day: bool
    strip: bool
    least: Quantity | None
    made_by: tuple[Procedure, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ShiftWay:
    """One procedure by which an instrument, or some of its parts, comes back.

    ``needs`` are ids of `ShiftNeed`; of ``vessels`` one must work, when there are any.
    """

    procedure: Procedure
    route: Route
    parts: tuple[Part, ...]
    needs: tuple[str, ...]
    vessels: tuple[str, ...]
    bath: str
    minutes: int


@dataclass(frozen=True, slots=True, kw_only=True)
class ShiftInstrument:
    """An instrument with its ways, and the clinic's own rules for when none is open."""

    instrument: Instrument
    ways: tuple[ShiftWay, ...]
    emergency: tuple[Emergency, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Shift:
    """All that a shift is asked for; instruments that cannot wait come first."""

    needs: tuple[ShiftNeed, ...]
    baths: tuple[ShiftBath, ...]
    instruments: tuple[ShiftInstrument, ...]
