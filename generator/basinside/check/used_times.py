"""For what each time of a handbook is used: the fields that refer to it, and where."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final, NamedTuple

from basinside.check.checked import Checked
from basinside.model.entry import FigureRef
from basinside.model.procedure import Step
from basinside.model.words import Action
from basinside.problem import Place
from basinside.quantity import Quantity
from basinside.units import Kind

SECONDS: Final[dict[Kind, int]] = {Kind.TIME: 1, Kind.DAYS: 86_400, Kind.MONTHS: 30 * 86_400}
"""Seconds in the unit in which amounts of a kind are compared; a month has about 30 days."""
HELD: Final[frozenset[Action]] = frozenset({"soak", "expose", "hold", "cool", "dry", "unload"})


class Use(NamedTuple):
    """One use of a value: what for, by whom, and the node that refers to it."""

    what: str
    by: str
    ref: FigureRef
    also: tuple[Place, ...]


def seconds(amount: Quantity) -> float | None:
    """Return how long a time is; None for what is no time."""
    factor = SECONDS.get(amount.kind)
    return None if factor is None else float(amount.base) * factor


def uses(checked: Checked) -> Iterator[Use]:
    """Yield each use of a time in a field: of steps, tests, chemicals, incidents, the clinic."""
    for name, whole in checked.derived.procedures.items():
        for placed in whole.steps:
            step = placed.step
            if step.hold is None and step.wait is None and step.longest is None:
                continue
            also = (whole.procedure.place, step.place)
            soiled = placed.before == "soiled" and whole.route is not None
            for what, ref in _of_step(step, soiled=soiled):
                yield Use(what, f"{name}/{step.step}", ref, also)
    yield from _of_things(checked)


def _of_things(checked: Checked) -> Iterator[Use]:
    for instrument in checked.content.instruments.values():
        for line in instrument.function_test:
            if line.wait:
                yield Use("test wait", instrument.instrument, line.wait, (instrument.place,))
    for name, agent in checked.content.agents.items():
        for what, life in (("bath life", agent.life), ("stock life", agent.stock_life)):
            if life:
                yield Use(what, name, life, (agent.place,))
    for incident in checked.content.incidents.values():
        if incident.wait:
            yield Use("wait at once", incident.incident, incident.wait, (incident.place,))
        if incident.within:
            yield Use("time to report", incident.incident, incident.within, (incident.place,))
    handbook = checked.content.handbook
    test = handbook.clinic.spore_test if handbook else None
    if handbook and test and test.every:
        yield Use("time between spore tests", handbook.handbook, test.every, (handbook.place,))


def _of_step(step: Step, *, soiled: bool) -> Iterator[tuple[str, FigureRef]]:
    if step.hold is not None:
        if step.action == "wash hands":
            yield "washing of hands", step.hold
        elif step.action == "rinse":
            yield "rinse", step.hold
        elif step.action in HELD:
            yield "hold", step.hold
        if step.hold.no_longer_than is not None:
            yield "hold", step.hold.no_longer_than
    if step.wait is not None:
        yield "wait", step.wait
    if step.longest is not None:
        if soiled:
            yield "wait before cleaning", step.longest
        elif step.action == "store":
            yield "time on the shelf", step.longest
