"""What a procedure that runs a pressure vessel does before its time starts, and after it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import Final

from basinside.model.derived import PlacedStep, WholeProcedure
from basinside.model.equipment import Route
from basinside.model.handbook import Vessel
from basinside.model.words import MakesSure, Writes

_OF_A_RUN: Final[frozenset[MakesSure]] = frozenset(
    {
        "water in the vessel",
        "valve and gasket looked at",
        "regulator left alone",
        "room for steam",
        "air out first",
        "no pressure left",
    }
)
"""What only the steps at the vessel look after: a procedure that says one of it tells the run."""


@dataclass(frozen=True, kw_only=True)
class SteamRun:
    """One run: an instrument's procedure, or a task that several of them lead to.

    ``start`` is the step that gives the level. A procedure tells the run itself, or leads to the
    task that does; ``tasks`` are that task's steps, which count for what comes before the start
    and for what comes after it. One that tells a part of the run tells all of it: whoever follows
    its steps leaves out what they leave out, and ``tasks`` is empty. ``noted`` are the steps of
    all its tasks, as what they write down is written whoever tells the run. ``vessel`` and
    ``route`` are None where they are not known; a task has no route and no instrument.
    """

    whole: WholeProcedure
    route: Route | None
    vessel: Vessel | None
    start: PlacedStep
    tasks: tuple[PlacedStep, ...]
    noted: tuple[PlacedStep, ...]

    @property
    def name(self) -> str:
        """The procedure's id."""
        return self.whole.procedure.procedure

    @property
    def is_task(self) -> bool:
        """Whether this is a task, which packs no instrument."""
        return self.whole.instrument is None

    @property
    def wrapped(self) -> bool:
        """Whether what lies in the vessel is wrapped; it is where nothing says that it is not."""
        said = self.route.wrapped if self.route else self.start.step.wrap
        return said is not False

    @cached_property
    def before(self) -> tuple[PlacedStep, ...]:
        """The steps before the time starts, and those of the task that tells the run."""
        return (*(each for each in self._own if each.number < self.start.number), *self.tasks)

    @cached_property
    def after(self) -> tuple[PlacedStep, ...]:
        """The steps after the one that starts the time, and those of the task that tells it."""
        return (*(each for each in self._own if each.number > self.start.number), *self.tasks)

    @property
    def _own(self) -> tuple[PlacedStep, ...]:
        return self.whole.steps

    def until(self, last: PlacedStep) -> tuple[PlacedStep, ...]:
        """Return its steps up to one of them, that one too, and those of the task that tells it."""
        return (*(each for each in self._own if each.number <= last.number), *self.tasks)


def made_sure(steps: Iterable[PlacedStep]) -> frozenset[MakesSure]:
    """Return what steps make sure of."""
    return frozenset(word for each in steps for word in each.makes_sure)


def written_in(steps: Iterable[PlacedStep]) -> frozenset[Writes]:
    """Return what is written down in steps."""
    return frozenset(word for each in steps for word in each.writes)


def steam_runs(
    wholes: Iterable[WholeProcedure],
    with_tasks: Callable[[WholeProcedure], tuple[PlacedStep, ...]],
    vessels: dict[str, Vessel],
) -> Iterator[SteamRun]:
    """Yield the runs among procedures.

    Args:
        wholes: the procedures.
        with_tasks: gives the steps of one and those of the tasks that it leads to.
        vessels: the clinic's vessels by id.
    """
    for whole in wholes:
        vessel = vessels.get(whole.procedure.vessel or "")
        if whole.instrument is None:
            runs = whole.route is None and vessel is not None and vessel.kind != "dry heat oven"
        else:
            runs = whole.route is not None and whole.route.kind == "steam"
            runs = runs and whole.instrument.label != "single use"
        if runs and whole.level_steps:
            own = {id(each) for each in whole.steps}
            noted = tuple(each for each in with_tasks(whole) if id(each) not in own)
            yield SteamRun(
                whole=whole,
                route=whole.route,
                vessel=vessel,
                start=whole.level_steps[0],
                tasks=noted if _OF_A_RUN.isdisjoint(made_sure(whole.steps)) else (),
                noted=noted,
            )
