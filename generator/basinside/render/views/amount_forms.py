"""The forms of the calculators as the page's script lays them out: fields, choices, own values."""

from __future__ import annotations

from math import ceil
from typing import Any, Final

from basinside.model.amounts import DIALS
from basinside.render.amount_words import phrase, unit_words
from basinside.render.views.spot import Spot
from basinside.render.wording import _, sentence

Field = dict[str, Any]

DAYS_IN_YEAR: Final = 365
HOURS: Final = "8"


def amount_forms(spot: Spot) -> dict[str, list[Field]]:
    """Return the fields of each calculator's form, filled with the clinic's own values.

    A field has a ``name``, a ``label`` and a ``kind``: ``number``, ``choice``, ``preset`` (a
    choice, or a number of one's own), ``day``, ``moment``, ``lines``, or ``fill``, whose choices
    fill other fields. ``after`` stands behind a number; ``unit`` is a choice beside it; ``when``
    says at which choice of another field it is asked.
    """
    return {**_chlorine(spot), **_heat(spot), **_days(spot)}


def _chlorine(spot: Spot) -> dict[str, list[Field]]:
    ground = spot.desk.derived.amounts.ground
    made = _made(spot)
    return {
        "liquid": [
            _choice(
                "label",
                ("available", _("% available chlorine")),
                ("degrees", _("degrees (chlorum)")),
                ("hypochlorite", _("% sodium hypochlorite")),
            ),
            _number("strength", ground.liquid),
            *made,
        ],
        "powder": [
            _number("strength", ground.powder, after=_("% available chlorine")),
            *made,
        ],
        "tablets": [_number("grams", ground.tablet_grams, after="g"), *made],
    }


def _heat(spot: Spot) -> dict[str, list[Field]]:
    ground = spot.desk.derived.amounts.ground
    return {
        "boiling": [_number("altitude", ground.altitude, after="m")],
        "gauge": [
            _choice(
                "vessel",
                *((each.vessel, sentence(each.name)) for each in ground.vessels),
                ("other", _("Another vessel")),
            ),
            {
                **_number("mark", ""),
                "unit": _unit(*DIALS),
                "when": ["vessel", "other"],
            },
            _number("temperature", ground.steam_celsius, after="°C"),
            _number("altitude", ground.altitude, after="m"),
        ],
        "load": [
            {
                "name": "log",
                "label": phrase("field.log"),
                "kind": "lines",
                "hint": _(
                    "One reading a line: the time, a space, the temperature, as 14:05 121. Minutes"
                    " do instead of clock times."
                ),
            },
            _number("temperature", ground.steam_celsius, after="°C"),
            _number("minutes", ground.steam_minutes, after="min"),
        ],
    }


def _days(spot: Spot) -> dict[str, list[Field]]:
    ground = spot.desk.derived.amounts.ground
    return {
        "out-time": [
            {"name": "start", "label": phrase("field.start"), "kind": "moment"},
            _choice(
                "hold",
                *((each.figure, _hold(each.name, each.seconds)) for each in ground.holds),
                ("other", _("Another time")),
            ),
            {**_number("time", ""), "unit": _unit("min", "h"), "when": ["hold", "other"]},
        ],
        "discard": [
            {"name": "made", "label": phrase("field.made"), "kind": "day", "today": True},
            _choice(
                "product",
                *((each.agent, each.name) for each in ground.lives),
                ("other", _("Another solution")),
            ),
            {
                **_number("life", ""),
                "unit": _choice(
                    "unit", ("day", _("days")), ("week", _("weeks")), ("month", _("months"))
                ),
                "when": ["product", "other"],
            },
            {"name": "strip", "label": phrase("field.strip"), "kind": "day"},
            {"name": "cloudy", "label": phrase("field.cloudy"), "kind": "day"},
        ],
        "sets": [
            *_instruments(spot),
            _number("cases", ""),
            {**_number("turnaround", ""), "unit": _unit("min", "h")},
            _number("hours", HOURS, after="h"),
            _number("reserve", "0"),
        ],
    }


def _made(spot: Spot) -> list[Field]:
    ground = spot.desk.derived.amounts.ground
    options = [
        [
            each.percent,
            _("{percent} %: {name}").format(
                percent=each.percent, name="".join(span.text for span in spot.prose(each.name))
            ),
        ]
        for each in ground.strengths
    ]
    wanted = {
        "name": "wanted",
        "label": phrase("field.wanted"),
        "kind": "preset",
        "options": [*options, ["", _("Another strength")]],
        "other": _("Wanted strength of your own"),
        "after": _("% available chlorine"),
    }
    volume = {**_number("volume", ground.bath_litres), "unit": _unit("L", "mL")}
    return [wanted, volume]


def _instruments(spot: Spot) -> list[Field]:
    own = spot.desk.derived.amounts.ground.sets
    if not own:
        return []
    fills = [
        [
            each.name,
            {
                "cases": str(ceil(each.cases_a_year / DAYS_IN_YEAR)),
                "turnaround": str(each.turnaround),
                "unit": "min",
                "reserve": str(each.reserve),
            },
        ]
        for each in own
    ]
    return [{"name": "", "label": _("Instrument"), "kind": "fill", "options": fills}]


def _number(name: str, value: str, after: str = "") -> Field:
    return {
        "name": name,
        "label": phrase(f"field.{name}"),
        "kind": "number",
        "value": value,
        "after": after,
    }


def _choice(name: str, *options: tuple[str, str]) -> Field:
    return {
        "name": name,
        "label": phrase(f"field.{name}"),
        "kind": "choice",
        "options": [list(each) for each in options],
    }


def _unit(*units: str) -> Field:
    return _choice("unit", *((each, unit_words(each)) for each in units))


def _hold(name: str, seconds: int) -> str:
    return _("{name}: {minutes} min").format(name=name, minutes=-(-seconds // 60))
