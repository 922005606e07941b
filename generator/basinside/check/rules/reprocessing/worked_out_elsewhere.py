"""The rule worked-out-elsewhere."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from math import ceil, floor
from typing import Final

from basinside.check.checked import Checked
from basinside.check.house import next_measurable, written
from basinside.check.mixtures import MUCH_TOO_STRONG
from basinside.check.rule import Finding, rule
from basinside.check.saying import amount
from basinside.model.figure import Figure, WorkedOut
from basinside.problem import Level
from basinside.science.boiling import boiling_point_celsius
from basinside.science.steam import gauge_pressure_kpa
from basinside.units import Kind

MILLILITRES_IN_LITRE: Final = 1000
NEAR_CELSIUS: Final = 2
NEAR_KPA: Final = 10
"""How far a value may be rounded to the safe side before it is another clinic's (our own)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Here:
    """What a value is here: the least and the most it may be, in its unit, and how it is said.

    ``write`` is the next amount that the clinic's own measures show.
    """

    low: float | Fraction
    high: float | Fraction
    said: str
    write: str = ""


@rule(level=Level.STOP)
def check_worked_out_elsewhere(checked: Checked) -> Iterator[Finding]:
    """A computed value is what this clinic's altitude, products and vessels make of it.

    Why: somebody buys another bottle, or copies a handbook for a clinic lower down, and corrects
    the product or the altitude. Each sentence that names a computed value goes on saying the old
    one, and two sheets on one wall disagree. A value that says what it is worked out from is
    worked out again.
    Bad: `value: 10 mL` with `worked_out: {of: chlorine, to: {figure: wipe.strength}}`, which is
    for each litre, and a bottle of 3.5 %.
    Good: the same, and `value: 15 mL`; `worked_out: {boils: here}`,
    `worked_out: {gauge_for: {figure: steam.temperature}}`, `worked_out: {reached_by: small}`.
    Source: CDC, Best practices for environmental cleaning, appendix E; IAPWS-IF97, region 4; ICAO
    standard atmosphere.
    """
    for name, figure in checked.content.figures.items():
        if figure.worked_out is None:
            continue
        here = _here(checked, figure, figure.worked_out)
        if here is None or here.low <= _number(figure) <= here.high:
            continue
        ground = _ground(checked, figure.worked_out)
        yield Finding(
            figure.place.at("value"),
            f"{name} is {amount(figure.value)}; worked out for {ground} it is {here.said}",
            f"If {ground} is right, write {here.write or here.said} or a little to the safe side,"
            " also in “source_says”.",
            (figure.worked_out.place,),
        )


def _ground(checked: Checked, worked: WorkedOut) -> str:
    """Return the strength of the product or the altitude that a value is worked out for."""
    agent = checked.content.agents.get(worked.of or "")
    if agent and agent.product and agent.product.strength:
        return amount(agent.product.strength)
    handbook = checked.content.handbook
    return amount(handbook.clinic.altitude) if handbook else "this clinic"


def _number(figure: Figure) -> float | Fraction:
    """Return a value in the unit it is worked out in: mL, g, parts, °C, kPa."""
    base = figure.value.base
    return base / 1000 if figure.value.kind is Kind.GAUGE else base


def _here(checked: Checked, figure: Figure, worked: WorkedOut) -> Here | None:
    """Return what a value is here; None when it cannot be worked out, which other rules say."""
    if worked.of is not None:
        return _mixed(checked, figure, worked)
    handbook = checked.content.handbook
    if handbook is None:
        return None
    altitude = float(handbook.clinic.altitude.base)
    try:
        if worked.boils is not None:
            return _as_hot(boiling_point_celsius(altitude))
        hot = checked.figure(worked.gauge_for)
        if hot is not None and hot.value.kind is Kind.TEMPERATURE:
            kpa = gauge_pressure_kpa(float(hot.value.base), altitude)
            return Here(low=kpa, high=ceil(kpa) + NEAR_KPA, said=f"{ceil(kpa)} kPa gauge")
    except ValueError:
        return None
    reach = checked.derived.vessels.get(worked.reached_by or "")
    return _as_hot(reach.reached_celsius) if reach and reach.reached_celsius is not None else None


def _as_hot(celsius: float) -> Here:
    """Return a heat that is never said to be more than it is."""
    return Here(low=floor(celsius) - NEAR_CELSIUS, high=celsius, said=f"{floor(celsius)} °C")


def _mixed(checked: Checked, figure: Figure, worked: WorkedOut) -> Here | None:
    agent = checked.content.agents.get(worked.of or "")
    held = agent.product.strength if agent and agent.product else None
    wanted = checked.figure(worked.to)
    if held is None or wanted is None or held.kind is not wanted.value.kind:
        return None
    if not 0 < wanted.value.base <= held.base:
        return None
    if figure.value.kind is Kind.COUNT:
        parts = held.base / wanted.value.base - 1
        return Here(low=parts / MUCH_TOO_STRONG, high=parts, said=f"{floor(parts)} parts")
    whole = checked.figure(worked.in_)
    if whole is not None and whole.value.kind is not Kind.VOLUME:
        return None
    millilitres = whole.value.base if whole else Fraction(MILLILITRES_IN_LITRE)
    # 1 % is 1 g in 100 mL: grams of a powder and millilitres of a liquid are one sum.
    needed = wanted.value.base / held.base * millilitres
    kind = figure.value.kind
    said = f"{_rounded_up(needed)} {'g' if kind is Kind.MASS else 'mL'}"
    true = next_measurable(checked, kind, needed)
    write = written(true, kind) if true is not None and true <= needed * MUCH_TOO_STRONG else said
    return Here(low=needed, high=needed * MUCH_TOO_STRONG, said=said, write=write)


def _rounded_up(needed: Fraction) -> str:
    """Return an amount with at most one decimal, never less than is needed."""
    tenths = ceil(needed * 10)
    return f"{tenths // 10}" if tenths % 10 == 0 else f"{tenths // 10}.{tenths % 10}"
