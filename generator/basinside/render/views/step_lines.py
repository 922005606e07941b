"""What the instrument itself says about a step: its test, its parts in order, its lubrication."""

from __future__ import annotations

from typing import Final

from basinside.model.derived import PlacedStep, WholeProcedure
from basinside.model.instrument import Instrument, Part
from basinside.render.view_types import FactView, StepLineView, plain
from basinside.render.views.chemicals import chemical_span
from basinside.render.views.parts import counted
from basinside.render.views.spot import Spot, fact, present
from basinside.render.wording import _, sentence

MANY: Final = 2


def step_lines(spot: Spot, whole: WholeProcedure, placed: PlacedStep) -> tuple[StepLineView, ...]:
    """Return the lines that a step asks of its instrument, in working order; none for most."""
    instrument = whole.instrument
    if instrument is None:
        return ()
    if placed.step.action == "test":
        return _test(spot, instrument)
    if placed.step.action == "take apart":
        return _taken_apart(instrument, whole, placed)
    if placed.step.action == "lubricate":
        return tuple(
            StepLineView(do=plain(sentence(each.shown_name)), then=_oil(spot, each))
            for each in whole.parts
            if each.lubricate
        )
    return ()


def _taken_apart(
    instrument: Instrument, whole: WholeProcedure, placed: PlacedStep
) -> tuple[StepLineView, ...]:
    """Return what comes off, in order: of the parts that the step or the procedure is for."""
    own = placed.step.parts or tuple(each.part for each in whole.parts)
    order = [each for each in instrument.take_apart if each in own]
    if len(order) < MANY:  # the sentence of the step says it
        return ()
    return tuple(StepLineView(do=plain(_shown(instrument, each))) for each in order)


def _test(spot: Spot, instrument: Instrument) -> tuple[StepLineView, ...]:
    return tuple(
        StepLineView(
            do=spot.prose(line.do),
            then=present(
                fact(_("Wait:"), spot.value_prose(line.wait)),
                fact(_("Must happen:"), spot.prose(line.expect)),
                fact(_("If not:"), spot.prose(line.if_not)),
            ),
        )
        for line in instrument.function_test
    )


def _shown(instrument: Instrument, part: str) -> str:
    found = instrument.part_named(part)
    return sentence(counted(found) if found else part.replace("-", " "))


def _oil(spot: Spot, part: Part) -> tuple[FactView, ...]:
    oil = part.lubricate
    if oil is None:
        return ()
    return present(
        fact(_("With:"), (chemical_span(spot, oil.with_),)),
        fact(_("How much:"), spot.prose(oil.amount)),
        fact(_("When:"), spot.prose(oil.when)),
        fact(_("Never:"), oil.never or ""),
    )
