"""For what each time of a handbook is used: the fields that refer to it, and where."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final, NamedTuple

from basinside.check.checked import Checked
from basinside.model.entry import FigureRef
from basinside.model.procedure import Step
from basinside.model.prose import references
from basinside.model.words import Action
from basinside.problem import Place
from basinside.quantity import Quantity
from basinside.units import Kind

SECONDS: Final[dict[Kind, int]] = {Kind.TIME: 1, Kind.DAYS: 86_400, Kind.MONTHS: 30 * 86_400}
"""Seconds in the unit in which amounts of a kind are compared; a month has about 30 days."""
HELD: Final[frozenset[Action]] = frozenset({"soak", "expose", "hold"})
WAITS: Final[frozenset[Action]] = frozenset({"cool", "dry", "unload"})


class Use(NamedTuple):
    """One use of a value: what for, by whom, its id, and the nodes that refer to it."""

    what: str
    by: str
    figure: str
    also: tuple[Place, ...]


def seconds(amount: Quantity) -> float | None:
    """Return how long a time is; None for what is no time."""
    factor = SECONDS.get(amount.kind)
    return None if factor is None else float(amount.base) * factor


def uses(checked: Checked) -> Iterator[Use]:
    """Yield uses of times in fields: of tests, chemicals, incidents, the clinic, and of steps.

    Of steps the first that uses a value for a thing stands for all others that do.
    """
    seen: set[tuple[str, str]] = set()
    for name, whole in checked.derived.procedures.items():
        for placed in whole.steps:
            step = placed.step
            if placed.hold is None and step.wait is None and step.longest is None:
                continue
            also = (whole.procedure.place, step.place)
            soiled = placed.before == "soiled" and whole.route is not None
            for what, ref in _of_step(step, soiled=soiled):
                if (what, ref.figure) in seen:
                    continue
                seen.add((what, ref.figure))
                yield Use(what, f"{name}/{step.step}", ref.figure, also)
    yield from _of_things(checked)


def _of_things(checked: Checked) -> Iterator[Use]:
    for instrument in checked.content.instruments.values():
        for line in instrument.function_test:
            if line.wait:
                yield Use("test wait", instrument.instrument, line.wait.figure, (instrument.place,))
    for name, agent in checked.content.agents.items():
        for what, life in (("bath life", agent.life), ("stock life", agent.stock_life)):
            if life:
                yield Use(what, name, life.figure, (agent.place,))
        for each in references(agent.prepare or ""):
            yield Use("time to prepare", name, each.figure, (agent.place,))
    for incident in checked.content.incidents.values():
        if incident.wait:
            yield Use("wait at once", incident.incident, incident.wait.figure, (incident.place,))
        if incident.within:
            yield Use(
                "time to report", incident.incident, incident.within.figure, (incident.place,)
            )
    handbook = checked.content.handbook
    test = handbook.clinic.spore_test if handbook else None
    if handbook and test and test.every:
        yield Use(
            "time between spore tests", handbook.handbook, test.every.figure, (handbook.place,)
        )


def _of_step(step: Step, *, soiled: bool) -> Iterator[tuple[str, FigureRef]]:
    if step.hold is not None:
        if step.action == "wash hands":
            yield "washing of hands", step.hold
        elif step.action == "rinse":
            yield "rinse", step.hold
        elif step.action in HELD:
            yield "hold", step.hold
        elif step.action in WAITS:
            yield "drying or cooling", step.hold
        if step.hold.no_longer_than is not None:
            yield "hold", step.hold.no_longer_than
    if step.wait is not None:
        yield "wait", step.wait
    if step.longest is not None:
        if step.action == "store":  # also where the cleaning before it was forgotten
            yield "time on the shelf", step.longest
        elif soiled:
            yield "wait before cleaning", step.longest
