"""The clinic's own usual questions, answered when the page is made: useful without a script."""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil
from typing import Final

from basinside.derive.amounts import answer
from basinside.derive.amounts.ground import clinic_ground
from basinside.model.amounts import AmountKind, Amounts, Ground, Usual
from basinside.model.content import Content
from basinside.model.derived import VesselReach, WholeProcedure

DAYS_IN_YEAR: Final = 365
USUAL_HOURS: Final = "8"
"""Hours in a day in which somebody works at the basin (common practice)."""


def clinic_amounts(
    content: Content,
    vessels: tuple[VesselReach, ...],
    procedures: tuple[WholeProcedure, ...],
) -> Amounts:
    """Return the clinic's calculators with its usual questions answered."""
    ground = clinic_ground(content, vessels, procedures)
    return Amounts(ground=ground, usual=tuple(_usual(ground)))


def _usual(ground: Ground) -> Iterator[Usual]:
    yield from _chlorine(ground)
    if ground.altitude:
        yield _asked(ground, "boiling", ("here",), altitude=ground.altitude)
        for vessel in ground.vessels:
            if ground.steam_celsius:
                yield _asked(
                    ground,
                    "gauge",
                    (vessel.vessel,),
                    vessel=vessel.vessel,
                    temperature=ground.steam_celsius,
                    altitude=ground.altitude,
                )
    for own in ground.sets:
        yield _asked(
            ground,
            "sets",
            (own.instrument,),
            cases=str(ceil(own.cases_a_year / DAYS_IN_YEAR)),
            turnaround=str(own.turnaround),
            unit="min",
            hours=USUAL_HOURS,
            reserve=str(own.reserve),
        )


def _chlorine(ground: Ground) -> Iterator[Usual]:
    volumes = dict.fromkeys(("1", *((ground.bath_litres,) if ground.bath_litres else ())))
    for strength in ground.strengths:
        for volume in volumes:
            about = (strength.figure, volume)
            made = {"wanted": strength.percent, "volume": volume, "unit": "L"}
            if ground.liquid:
                yield _asked(
                    ground, "liquid", about, label="available", strength=ground.liquid, **made
                )
            if ground.powder:
                yield _asked(ground, "powder", about, strength=ground.powder, **made)
            if ground.tablet_grams:
                yield _asked(ground, "tablets", about, grams=ground.tablet_grams, **made)


def _asked(ground: Ground, kind: AmountKind, about: tuple[str, ...], **typed: str) -> Usual:
    return Usual(about=about, typed=tuple(typed.items()), answer=answer(ground, kind, dict(typed)))
