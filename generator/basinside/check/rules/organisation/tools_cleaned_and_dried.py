"""The rule tools-cleaned-and-dried."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import Final

from basinside.check.checked import Checked
from basinside.check.chemicals import DISINFECTANTS
from basinside.check.rule import Finding, rule
from basinside.check.task_steps import at_its_stages, at_its_step, first_of, tasks
from basinside.model.derived import LEVEL_STAGES, PlacedStep, WholeProcedure
from basinside.model.words import Action
from basinside.problem import Level

WETS: Final[frozenset[Action]] = frozenset({"clean", "rinse", "soak", "load", "expose", "unload"})
INTO: Final[frozenset[Action]] = frozenset({"load", "expose"})


@rule(level=Level.STOP)
def check_tools_cleaned_and_dried(checked: Checked) -> Iterator[Finding]:
    """A task that washes brushes and basins empties, washes, rinses, and dries them, in this order.

    Why: in a damp brush and between wet basins germs grow over night, and in the morning they are
    brushed onto every part. Chlorine on a soiled basin does nothing.
    Asked of each task that washes tools (`action: clean` with `in` or `with`). Where any procedure
    looks for sharps, one may lie in a basin: a step with `makes_sure: [sharps out]` empties it
    before it is washed. Brushes are looked at (`inspect`). A `rinse` comes after the washing and
    before what gives a level (`load`, `expose`, a disinfectant to `wipe` with), and what is wiped
    stays wet (`hold`). What had a level is taken out (`unload`) with washed hands. `dry` comes
    after the last water and before `store`; it is written down at the end (`record`).
    Bad: wash, boil, store.
    Good: empty, wash, rinse, boil, take out, dry, store, record.
    Source: HSE, ultrasonic baths (emptied and dried overnight); common practice for brushes.
    """
    sharps = any(_looked_for(each.whole.steps) for each in checked.sound)
    for whole in tasks(checked):
        washes = [placed for placed in whole.steps if _washes_tools(placed)]
        if washes:
            yield from _in_order(checked, whole, washes, sharps=sharps)
            yield from _dried(whole)
            if first_of(whole.steps[washes[-1].number :], "record") is None:
                yield at_its_stages(
                    whole,
                    f"{whole.procedure.procedure} washes tools, and nobody writes it down",
                    "Put a step with “action: record” at its end.",
                )


def _washes_tools(placed: PlacedStep) -> bool:
    return placed.action == "clean" and bool(placed.in_ or placed.with_)


def _looked_for(steps: Iterable[PlacedStep]) -> bool:
    return any("sharps out" in placed.makes_sure for placed in steps)


def _is_tool(checked: Checked, placed: PlacedStep) -> bool:
    equipment = checked.content.equipment
    named = (equipment.get(name) for name in placed.with_)
    return any(each is not None and each.kind == "brush or tool" for each in named)


def _in_order(
    checked: Checked, whole: WholeProcedure, washes: Sequence[PlacedStep], *, sharps: bool
) -> Iterator[Finding]:
    name, first, last = whole.procedure.procedure, washes[0], washes[-1]
    if sharps and not _looked_for(whole.steps[: first.number - 1]):
        yield at_its_step(
            whole,
            first,
            f"{name} washes in {first.step.step} what may hold a sharp that nobody looked for",
            "Empty it in a step before it, and write “makes_sure: [sharps out]” there.",
        )
    brushes = any(_is_tool(checked, placed) for placed in washes)
    if brushes and first_of(whole.steps[first.number :], "inspect") is None:
        yield at_its_step(
            whole,
            last,
            f"{name} washes brushes in {last.step.step}, and nobody looks whether they are worn",
            "Put a step with “action: inspect” after it.",
        )
    rinse = first_of(whole.steps[last.number :], "rinse")
    given = next((placed for placed in whole.steps if _gives_level(placed)), None)
    if rinse is None or (given is not None and given.number < rinse.number):
        where = given or last
        yield at_its_step(
            whole,
            where,
            f"{name} does not rinse what it washes in {last.step.step}"
            + (f" before {where.step.step}" if given else ""),
            "Put a step with “action: rinse” between them.",
        )
    washed = first_of(whole.steps[last.number :], "wash hands")
    out = first_of(whole.steps[last.number :], "unload")
    if out is not None and (washed is None or washed.number > out.number):
        yield at_its_step(
            whole,
            out,
            f"{name} takes out in {out.step.step} what is clean, with hands from the washing",
            "Put a step with “action: wash hands” before it.",
        )
    for placed in whole.steps:
        if _wipes(placed) and first_of(whole.steps[placed.number :], "hold") is None:
            yield at_its_step(
                whole,
                placed,
                f"{name} does not say how long what {placed.step.step} wipes stays wet",
                "Put a step with “action: hold” and its time after it.",
            )


def _wipes(placed: PlacedStep) -> bool:
    agent = placed.agent
    return placed.action == "wipe" and agent is not None and agent.family in DISINFECTANTS


def _gives_level(placed: PlacedStep) -> bool:
    return placed.stage.stage in LEVEL_STAGES and (placed.action in INTO or _wipes(placed))


def _dried(whole: WholeProcedure) -> Iterator[Finding]:
    wet: PlacedStep | None = None
    for placed in whole.steps:
        if placed.action in WETS and (placed.action != "clean" or _washes_tools(placed)):
            wet = placed
        elif placed.action == "dry":
            wet = None
        elif placed.action == "store" and wet is not None:
            break
    if wet is not None:
        yield at_its_step(
            whole,
            wet,
            f"{whole.procedure.procedure} puts away wet what it took out of the water in"
            f" {wet.step.step}",
            "Put a step with “action: dry” after it, before anything is stored.",
        )
