"""The rule figure-outside-source-limits."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked, Sound
from basinside.check.limits import outside
from basinside.check.rule import Finding, rule
from basinside.check.saying import amount
from basinside.model.derived import LEVEL_STAGES
from basinside.model.entry import FigureRef
from basinside.model.figure import Figure
from basinside.problem import Level
from basinside.quantity import Quantity


@rule(level=Level.STOP)
def check_figure_outside_source_limits(checked: Checked) -> Iterator[Finding]:
    """A value keeps to what its source prints, and a step is not weaker than its route.

    Why: a shorter time or a weaker bath than the source asks for leaves germs alive, and a longer
    or stronger one than it allows ruins the instrument or hurts people.
    Bad: `value: 10 min` with `source_says: {at_least: 20 min}`.
    Good: `value: 20 min` with `source_says: {at_least: 20 min}`.
    Source: the one cited beside the value.
    """
    for name, figure in checked.content.figures.items():
        if figure.source_says is not None:
            said = outside(figure.value, figure.source_says)
            if said:
                yield Finding(
                    figure.place.at("value"),
                    f"{name} is {amount(figure.value)}; its source {said}"
                    f" ({checked.cited(figure.source)})",
                    "Write its unit, as its source does."
                    if figure.value.unit == "count"
                    else "Look it up there; then mend the value, or what “source_says”.",
                    (figure.place,),
                )
    for each in checked.sound:
        yield from _weaker_steps(checked, each)


def _weaker_steps(checked: Checked, each: Sound) -> Iterator[Finding]:
    route, levels = each.route, each.level_steps
    if route.hold and levels and not any(placed.hold for placed in levels):
        wanted = checked.figure(route.hold)
        if wanted is not None:
            yield Finding(
                levels[-1].step.place,
                f"{levels[-1].step.step} states no time;"
                f" {route.route} asks for {amount(wanted.value)}"
                f" ({route.hold.figure}; {checked.cited(wanted.source)})",
                "Write “hold:” with its figure.",
            )
    for placed in each.whole.steps:
        step = placed.step
        if placed.is_level_step:
            yield from _weaker(checked, each, step.step, placed.hold, route.hold)
            yield from _weaker(checked, each, step.step, placed.temperature, route.temperature)
        if placed.stage.stage in LEVEL_STAGES and step.agent in {None, route.agent}:
            yield from _weaker(checked, each, step.step, step.strength, route.strength)
        if placed.hold and placed.hold.no_longer_than:
            shortest = checked.figure(placed.hold)
            longest = checked.figure(placed.hold.no_longer_than)
            if shortest and longest and _is_below(longest.value, shortest.value):
                yield Finding(
                    placed.hold.no_longer_than.place.at("figure"),
                    f"{step.step} may last no longer than {amount(longest.value)}, and must last"
                    f" {amount(shortest.value)}",
                    "Look both up: the longest time is the larger one.",
                )


def _weaker(
    checked: Checked, each: Sound, step: str, used: FigureRef | None, wanted: FigureRef | None
) -> Iterator[Finding]:
    """Yield a finding when a step's value is weaker than its route's, or of another kind."""
    here: Figure | None = checked.figure(used)
    there: Figure | None = checked.figure(wanted)
    if used is None or wanted is None or here is None or there is None:
        return
    place = used.place.at("figure")
    if here.value.kind is not there.value.kind:
        yield Finding(
            place,
            f"{step} uses {used.figure}, {amount(here.value)}; it cannot be compared with"
            f" {wanted.figure}, {amount(there.value)}, of {each.route.route}",
            f"Write “figure: {wanted.figure}”, or a value with the unit of that one.",
        )
    elif here.value < there.value:
        yield Finding(
            place,
            f"{step} uses {used.figure}, {amount(here.value)}; {each.route.route} asks for at"
            f" least {amount(there.value)} ({wanted.figure}; {checked.cited(there.source)})",
            f"Write “figure: {wanted.figure}”, or a value that is no weaker.",
        )


def _is_below(one: Quantity, other: Quantity) -> bool:
    return one.kind is other.kind and one < other
