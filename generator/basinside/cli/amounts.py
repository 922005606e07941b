"""The calculators at the prompt: one command a kind, with the clinic's own values by default."""

from __future__ import annotations

import json
import re
import sys
from collections.abc import Callable
from datetime import datetime
from functools import partial
from pathlib import Path
from typing import Any, TypeVar

import click
from click.core import ParameterSource

from basinside.cli.listed import Listed
from basinside.cli.typed import day_or_today, folder_option, say
from basinside.model.amounts import DIALS
from basinside.pipeline import amounts

F = TypeVar("F", bound=Callable[..., Any])

WITH_UNIT = re.compile(r"(.*?[0-9٠-٩]) ?([a-zA-Z][a-zA-Z/²2]*)")
CLOCK_TIME = re.compile(r"[0-9]{1,2}:[0-9]{2}")
VOLUMES = ("L", "mL")
PRESSURES = tuple(DIALS)
TIMES = ("min", "h")
LIVES = ("day", "week", "month")
SPELT = {
    **dict.fromkeys(("l", "litre", "litres", "liter", "liters"), "L"),
    **dict.fromkeys(("ml", "millilitres", "milliliters"), "mL"),
    "kpa": "kPa",
    "kgf/cm2": "kgf/cm²",
    **dict.fromkeys(("mins", "minute", "minutes"), "min"),
    **dict.fromkeys(("hour", "hours"), "h"),
    **{f"{each}s": each for each in LIVES},
}


def _written(context: click.Context, option: click.Parameter, value: str) -> str:
    """Refuse a field that was given empty: what the clinic has is meant only by leaving it out."""
    given = context.get_parameter_source(option.name or "")
    if given is ParameterSource.COMMANDLINE and not value.strip():
        raise click.BadParameter("nothing is written there; write it, or leave the option out.")
    return value


_field = partial(click.option, callback=_written)


@click.group("amount", cls=Listed)
def amount() -> None:
    """Work out an amount or a time.

    What is left out is taken from the clinic's own handbook. Each answer shows its working, its
    source and what to take care of. A decimal comma is read as a point.
    """


def _asked(function: F) -> F:
    function = click.option("--json", "as_json", is_flag=True, help="Print it for a tool.")(
        function
    )
    return folder_option(function)


def _chlorine(function: F) -> F:
    function = _field(
        "--volume", default="", help="The whole bath, as 5L or 500mL; the clinic's own by default."
    )(function)
    return _field(
        "--wanted",
        default="",
        help="Wanted strength in % available chlorine; the clinic's own bath by default.",
    )(function)


def _answer(place: amounts.Place, kind: Any, typed: dict[str, str], *, as_json: bool) -> None:
    if not place.sound:
        click.echo("The handbook has mistakes that stop a build. Run basinside check.", err=True)
    found = amounts.ask(place, kind, typed)
    if as_json:
        click.echo(json.dumps(found.data, ensure_ascii=False, indent=1))
    else:
        say(*found.lines)
    sys.exit(0 if found.holds else 1)


def _split(text: str, units: tuple[str, ...]) -> tuple[str, str]:
    """Return a number and its unit as typed in one; the first of ``units`` when none was typed."""
    found = WITH_UNIT.fullmatch(text.strip())
    if not found:
        return text, units[0]
    unit = found[2] if found[2] in units else SPELT.get(found[2].lower(), found[2])
    if unit not in units:
        known = f"{', '.join(units[:-1])} or {units[-1]}"
        raise click.UsageError(f"“{found[2][:20]}” is no unit for this; write {known}.")
    return found[1], unit


def _without(text: str, *units: str) -> str:
    """Return a number without the unit that its option asks for anyway."""
    bare = text.strip()
    for unit in units:
        if bare.lower().endswith(unit):
            return bare[: -len(unit)].strip() or text
    return text


def _percent(text: str) -> str:
    if text.strip().lower().endswith("ppm"):
        raise click.UsageError("Write a strength in %: 1000 ppm are 0.1 %.")
    return _without(text, "%")


def _celsius(text: str) -> str:
    return _without(text, "°c", "c", "°")


def _metres(text: str) -> str:
    if text.strip().lower().endswith(("ft", "feet")):
        raise click.UsageError("Write metres above the sea: 1000 feet are 305 m.")
    return _without(text, "metres", "m")


def _given(text: str, own: str, option: str) -> str:
    if text or own:
        return text or own
    raise click.UsageError(f"This handbook does not say it; give {option}.")


def _made(place: amounts.Place, wanted: str, volume: str) -> dict[str, str]:
    ground = place.ground
    own = ground.strengths[0].percent if ground.strengths else ""
    number, unit = _split(_given(volume, ground.bath_litres, "--volume"), VOLUMES)
    return {"wanted": _percent(_given(wanted, own, "--wanted")), "volume": number, "unit": unit}


@amount.command()
@_field("--strength", default="", help="What the label says, in % available chlorine.")
@_field("--degrees", default="", help="What the label says, in degrees chlorum.")
@_field("--hypochlorite", default="", help="What the label says, in % sodium hypochlorite.")
@_chlorine
@_asked
def liquid(
    strength: str,
    degrees: str,
    hypochlorite: str,
    wanted: str,
    volume: str,
    folder: Path,
    as_json: bool,
) -> None:
    """How much chlorine from a bottle, in mL and in the clinic's own measures."""
    if sum(map(bool, (strength, degrees, hypochlorite))) > 1:
        raise click.UsageError("Give one of --strength, --degrees and --hypochlorite.")
    place = amounts.open_place(folder)
    label = "degrees" if degrees else "hypochlorite" if hypochlorite else "available"
    number = _without(degrees, "degrees", "°") or _percent(
        hypochlorite or _given(strength, place.ground.liquid, "--strength")
    )
    typed = {"label": label, "strength": number, **_made(place, wanted, volume)}
    _answer(place, "liquid", typed, as_json=as_json)


@amount.command()
@_field("--strength", default="", help="Available chlorine in the powder, in %.")
@_chlorine
@_asked
def powder(strength: str, wanted: str, volume: str, folder: Path, as_json: bool) -> None:
    """How many grams of chlorine powder."""
    place = amounts.open_place(folder)
    number = _percent(_given(strength, place.ground.powder, "--strength"))
    _answer(place, "powder", {"strength": number, **_made(place, wanted, volume)}, as_json=as_json)


@amount.command()
@_field("--grams", default="", help="Available chlorine in one tablet, in g.")
@_chlorine
@_asked
def tablets(grams: str, wanted: str, volume: str, folder: Path, as_json: bool) -> None:
    """How many chlorine tablets."""
    place = amounts.open_place(folder)
    number = _without(_given(grams, place.ground.tablet_grams, "--grams"), "g")
    _answer(place, "tablets", {"grams": number, **_made(place, wanted, volume)}, as_json=as_json)


@amount.command()
@_field("--altitude", default="", help="Metres above the sea; the clinic's own by default.")
@_asked
def boiling(altitude: str, folder: Path, as_json: bool) -> None:
    """How long to boil, and where water boils, at an altitude."""
    place = amounts.open_place(folder)
    metres = _metres(_given(altitude, place.ground.altitude, "--altitude"))
    _answer(place, "boiling", {"altitude": metres}, as_json=as_json)


@amount.command()
@_field("--vessel", default="", help="One of the clinic's vessels, by its id.")
@_field("--mark", default="", help="Or what a vessel's plate allows, as 150kPa or 20psi.")
@_field("--temperature", default="", help="Temperature of the steam in whole °C.")
@_field("--altitude", default="", help="Metres above the sea; the clinic's own by default.")
@_asked
def gauge(
    vessel: str, mark: str, temperature: str, altitude: str, folder: Path, as_json: bool
) -> None:
    """What the gauge of a steam vessel must show; refused where the vessel cannot reach it."""
    place = amounts.open_place(folder)
    own = [each.vessel for each in place.ground.vessels]
    if not vessel and not mark and len(own) == 1:
        (vessel,) = own
    if bool(vessel) == bool(mark):
        raise click.UsageError("Give --vessel or --mark.")
    if vessel and vessel not in own:
        raise click.UsageError(f"There is no vessel “{vessel}” here; there is {', '.join(own)}.")
    number, unit = _split(mark, PRESSURES)
    typed = {
        "vessel": vessel or "other",
        "mark": number,
        "unit": unit,
        "temperature": _celsius(_given(temperature, place.ground.steam_celsius, "--temperature")),
        "altitude": _metres(_given(altitude, place.ground.altitude, "--altitude")),
    }
    _answer(place, "gauge", typed, as_json=as_json)


@amount.command("out-time")
@_field("--start", default="", help="When the last part was in, as 14:05 or 2026-11-20 14:05.")
@_field("--of", "hold", default="", help="One of the clinic's held times, by its value's id.")
@_field("--time", default="", help="Or how long it is held, as 20min or 1.5h.")
@_asked
def out_time(start: str, hold: str, time: str, folder: Path, as_json: bool) -> None:
    """When a soak or a boil is over: the clock time to write on the log. Now by default."""
    if bool(hold) == bool(time):
        raise click.UsageError("Give --of or --time.")
    place = amounts.open_place(folder)
    own = [each.figure for each in place.ground.holds]
    if hold and hold not in own:
        raise click.UsageError(f"There is no held time “{hold}”; there is {', '.join(own)}.")
    number, unit = _split(time, TIMES)
    now = f"{datetime.now():%Y-%m-%d %H:%M}"  # noqa: DTZ005 - the clock on the wall
    if CLOCK_TIME.fullmatch(start.strip()):
        start = f"{now[:10]} {start.strip():0>5}"
    typed = {"start": start or now, "hold": hold or "other", "time": number, "unit": unit}
    _answer(place, "out-time", typed, as_json=as_json)


@amount.command()
@_field("--made", default="", help="When it was made or opened, as 2026-11-20; today by default.")
@_field("--of", "product", default="", help="One of the clinic's chemicals, by its id.")
@_field("--life", default="", help="Or how long it keeps, as 14days, 2weeks or 1month.")
@_field("--strip-failed", default="", help="When its strip failed.")
@_field("--cloudy", default="", help="When it was cloudy or dirty.")
@_asked
def discard(
    made: str,
    product: str,
    life: str,
    strip_failed: str,
    cloudy: str,
    folder: Path,
    as_json: bool,
) -> None:
    """When a solution is thrown away: its date, a failed strip or cloudy, whichever is first."""
    if bool(product) == bool(life):
        raise click.UsageError("Give --of or --life.")
    place = amounts.open_place(folder)
    own = [each.agent for each in place.ground.lives]
    if product and product not in own:
        raise click.UsageError(f"There is no life of “{product}”; there is {', '.join(own)}.")
    number, unit = _split(life, LIVES)
    if made.strip().lower() == "today":
        made = ""
    typed = {
        "made": made or day_or_today(None).isoformat(),
        "product": product or "other",
        "life": number,
        "unit": unit,
        "strip": strip_failed,
        "cloudy": cloudy,
    }
    _answer(place, "discard", typed, as_json=as_json)


@amount.command()
@click.argument("log", type=click.File(encoding="utf-8"))
@_field("--temperature", default="", help="Needed °C; the clinic's own by default.")
@_field("--minutes", default="", help="Needed minutes; the clinic's own by default.")
@_asked
def load(log: Any, temperature: str, minutes: str, folder: Path, as_json: bool) -> None:
    """Was a steam load held long enough: LOG has a time and a temperature on each line.

    The time is a clock time or a minute. A hyphen as LOG reads what you type.
    """
    place = amounts.open_place(folder)
    try:
        text = log.read()
    except UnicodeDecodeError:
        raise click.UsageError("The log is not plain text.") from None
    typed = {
        "log": text,
        "temperature": _celsius(_given(temperature, place.ground.steam_celsius, "--temperature")),
        "minutes": _without(_given(minutes, place.ground.steam_minutes, "--minutes"), "min"),
    }
    _answer(place, "load", typed, as_json=as_json)


@amount.command()
@_field("--of", "instrument", default="", help="One of the clinic's instruments, by its id.")
@_field("--cases", default="", help="Cases on a day.")
@_field("--turnaround", default="", help="Until a set is ready again, as 120min or 2h.")
@_field("--hours", default="8", show_default=True, help="Hours in which somebody works.")
@_field("--reserve", default="", help="Sets of the ready reserve.")
@_asked
def sets(
    instrument: str,
    cases: str,
    turnaround: str,
    hours: str,
    reserve: str,
    folder: Path,
    as_json: bool,
) -> None:
    """How many sets of an instrument the cases of a day need."""
    place = amounts.open_place(folder)
    own = {each.instrument: each for each in place.ground.sets}
    if instrument and instrument not in own:
        raise click.UsageError(f"There is no “{instrument}” here; there is {', '.join(own)}.")
    known = own.get(instrument)
    number, unit = _split(
        _given(turnaround, str(known.turnaround) if known else "", "--turnaround"), TIMES
    )
    typed = {
        "cases": _given(cases, "", "--cases"),
        "turnaround": number,
        "unit": unit,
        "hours": hours,
        "reserve": _given(reserve, str(known.reserve) if known else "0", "--reserve"),
    }
    _answer(place, "sets", typed, as_json=as_json)
