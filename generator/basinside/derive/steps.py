"""A procedure with what follows for each step: its number, its soil state, what it names.

Soil states: *soiled* until the cleaning's last rinse ends, *clean* until the level's hold ends,
*processed* after. A procedure without a route begins and ends with what is ready for use. Rules
and digests read these states and the closed actions, never the words.
"""

from __future__ import annotations

from functools import partial

from basinside.derive.durations import stages_about
from basinside.derive.routes import reached_level
from basinside.model.content import Content
from basinside.model.derived import LEVEL_STAGES, PlacedStep, SoilState, WholeProcedure
from basinside.model.equipment import Agent
from basinside.model.procedure import Procedure, Stage, Step
from basinside.model.words import Worn


def is_level_step(stage: Stage, step: Step) -> bool:
    """Whether a step is an exposure that is held in a disinfection or sterilization stage."""
    return step.action == "expose" and stage.stage in LEVEL_STAGES


def place_steps(content: Content, procedure: Procedure) -> WholeProcedure:
    """Return a procedure with everything that follows for its steps."""
    instrument = content.instrument_of(procedure)
    parts = instrument.parts if instrument else ()
    if procedure.parts:
        parts = tuple(each for each in parts if each.part in procedure.parts)
    pairs = procedure.steps
    ends = _cleaning_end(pairs)
    state: SoilState = "soiled" if procedure.route else "processed"
    placed: list[PlacedStep] = []
    for n, (stage, step) in enumerate(pairs):
        before = state
        gives_level = is_level_step(stage, step)
        if state == "soiled" and n == ends:
            state = "clean"
        elif state == "clean" and gives_level:
            state = "processed"
        agent = content.agents.get(step.agent) if step.agent else None
        placed.append(
            PlacedStep(
                n + 1,
                stage,
                step,
                before,
                state,
                agent,
                worn(step, agent),
                gives_level,
                step.action,
                step.danger,
                step.hold,
                step.temperature,
                step.in_,
                step.with_,
                step.makes_sure,
                step.writes,
            )
        )
    route = content.route_of(procedure)
    return WholeProcedure(
        procedure=procedure,
        instrument=instrument,
        route=route,
        parts=parts,
        steps=tuple(placed),
        level=reached_level(instrument, route) if instrument and route else None,
        find_times=partial(stages_about, content, procedure.stages),
    )


def _cleaning_end(pairs: tuple[tuple[Stage, Step], ...]) -> int:
    """Return the index of the last rinse after cleaning and before the level step, or -1."""
    end, cleaned = -1, False
    for n, (stage, step) in enumerate(pairs):
        if is_level_step(stage, step):
            break
        if step.action == "clean":
            cleaned = True
        elif step.action == "rinse" and cleaned:
            end = n
        elif stage.stage in LEVEL_STAGES and end >= 0:
            break
    return end


def worn(step: Step, agent: Agent | None) -> tuple[Worn, ...]:
    """Return what is worn: what the step says, then what its chemical adds, each once."""
    return tuple(dict.fromkeys((*step.wear, *agent.wear))) if agent else step.wear
