"""The clinic's own usual amounts as tables: they are worked out when the page is made."""

from __future__ import annotations

from typing import Final

from basinside.model.amounts import AmountKind, Usual
from basinside.render.amount_words import amount_text, phrase, said_words
from basinside.render.view_types import TableView
from basinside.render.views.spot import Spot
from basinside.render.wording import _, listed, n_, sentence

NO_BREAK_SPACE: Final = "\u00a0"
MADE: Final = frozenset(("liquid", "powder", "tablets"))


def usual_table(spot: Spot, kind: AmountKind) -> TableView | None:
    """Return the table of one calculator; None when the handbook says nothing of it."""
    rows = _rows(spot, kind)
    if not rows:
        return None
    caption, columns = _head(spot, kind)
    return TableView(caption=caption, columns=columns, rows=rows)


def _head(spot: Spot, kind: AmountKind) -> tuple[str, tuple[str, ...]]:
    ground = spot.desk.derived.amounts.ground
    here = _("At our altitude, {metres} m").format(metres=ground.altitude)
    return {
        "liquid": (
            _("From our bottle, {percent} % available chlorine").format(percent=ground.liquid),
            (_("For"), _("From the bottle"), _("True strength")),
        ),
        "powder": (
            _("From our powder, {percent} % available chlorine").format(percent=ground.powder),
            (_("For"), _("Powder"), _("True strength")),
        ),
        "tablets": (
            _("From our tablets, {grams} g available chlorine each").format(
                grams=ground.tablet_grams
            ),
            (_("For"), _("Tablets"), _("True strength")),
        ),
        "boiling": (here, (_("What"), _("How much"))),
        "gauge": (
            _("{here}, for {celsius} °C").format(here=here, celsius=ground.steam_celsius),
            (_("Vessel"), _("Gauge")),
        ),
        "out-time": (
            _("Our own times"),
            (_("What is held"), _("How long"), _("Out by")),
        ),
        "discard": (_("Our own solutions"), (_("Solution"), _("Keeps at most"))),
        "load": (_("Our own steam loads"), (_("Needed"), _("How much"))),
        "sets": (
            _("For the average day, with {hours} hours of work").format(hours=_hours(spot)),
            (_("Instrument"), _("Cases, ready again after"), _("Sets at least")),
        ),
    }[kind]


def _rows(spot: Spot, kind: AmountKind) -> tuple[tuple[str, ...], ...]:
    amounts = spot.desk.derived.amounts
    ground = amounts.ground
    if kind in MADE:
        return tuple(_made(spot, each) for each in amounts.of(kind))
    if kind == "boiling":
        return tuple(
            (_boiling(amount.of.code), amount_text(amount))
            for each in amounts.of(kind)
            for amount in each.answer.amounts
        )
    if kind == "gauge":
        return tuple(_gauge(spot, each) for each in amounts.of(kind))
    if kind == "out-time":
        return tuple(
            (
                each.name,
                _minutes(each.seconds),
                _("{minutes} at the latest").format(minutes=_minutes(each.longest))
                if each.longest
                else "–",
            )
            for each in ground.holds
        )
    if kind == "discard":
        return tuple((each.name, _life(each.number, each.unit)) for each in ground.lives)
    if kind == "load":
        return (
            (
                (phrase("field.temperature"), f"{ground.steam_celsius} °C"),
                (phrase("field.minutes"), f"{ground.steam_minutes} min"),
            )
            if ground.steam_celsius and ground.steam_minutes
            else ()
        )
    return tuple(_sets(spot, each) for each in amounts.of("sets"))


def _made(spot: Spot, usual: Usual) -> tuple[str, ...]:
    ground = spot.desk.derived.amounts.ground
    strength = next(each for each in ground.strengths if each.figure == usual.about[0])
    name = sentence("".join(span.text for span in spot.prose(strength.name)))
    answer = usual.answer
    what = _("{name}, {percent}\u00a0%, {litres}\u00a0L").format(
        name=name, percent=strength.percent, litres=usual.about[1]
    )
    if answer.refusal:
        return (what, said_words(answer.refusal), "")
    much = amount_text(answer.amounts[0])
    if answer.measured:
        pours = listed([said_words(each) for each in answer.measured])
        much = _("{amount} = {pours}").format(amount=much, pours=pours)
    return (what, much, f"{answer.strength} %")


def _boiling(code: str) -> str:
    return {
        "of-rolling-boil": _("Time at a rolling boil"),
        "of-boiling-water": _("Water boils at, rounded down"),
    }[code]


def _gauge(spot: Spot, usual: Usual) -> tuple[str, ...]:
    ground = spot.desk.derived.amounts.ground
    vessel = next(each for each in ground.vessels if each.vessel == usual.about[0])
    answer = usual.answer
    if answer.refusal:
        return (sentence(vessel.name), said_words(answer.refusal))
    said = f"{amount_text(answer.amounts[0])} {said_words(answer.amounts[0].of)}"
    return (sentence(vessel.name), said)


def _sets(spot: Spot, usual: Usual) -> tuple[str, ...]:
    own = next(
        each for each in spot.desk.derived.amounts.ground.sets if each.instrument == usual.about[0]
    )
    typed = dict(usual.typed)
    reserve = _("{sets}, {n} in reserve").format(sets=usual.answer.amounts[0].number, n=own.reserve)
    shown = reserve if own.reserve else usual.answer.amounts[0].number
    cases = n_("one case", "{n} cases", int(typed["cases"]))
    day = _("{cases}, about {time}").format(
        cases=cases, time=f"{own.turnaround}{NO_BREAK_SPACE}min"
    )
    return (own.name, day, shown)


def _hours(spot: Spot) -> str:
    usual = spot.desk.derived.amounts.of("sets")
    return dict(usual[0].typed)["hours"] if usual else ""


def _minutes(seconds: int) -> str:
    return f"{seconds // 60} min" if seconds % 60 == 0 else f"{seconds} s"


def _life(number: int, unit: str) -> str:
    if unit == "month":
        return n_("{n} month", "{n} months", number)
    return n_("{n} day", "{n} days", number)
