"""Procedures: the page that is read at the basin and printed as a job aid."""

from __future__ import annotations

from basinside.model.at_hand import route_not_had
from basinside.model.derived import PlacedStep, WholeProcedure
from basinside.model.words import CARE_LEVELS
from basinside.render.view_types import (
    BasinView,
    FactView,
    FlowView,
    LinkView,
    ProcedureView,
    Prose,
    StageView,
    StepWords,
    ValueLineView,
    plain,
)
from basinside.render.views.partly import never_heat
from basinside.render.views.parts import numbered_parts
from basinside.render.views.ready import ready_note
from basinside.render.views.spot import Spot, fact, present, state
from basinside.render.views.step import step_view
from basinside.render.views.titles import procedure_title
from basinside.render.views.waivers import waiver_views
from basinside.render.wording import _, listed, n_, sentence


def procedure_view(spot: Spot, whole: WholeProcedure) -> ProcedureView:
    """Return the page of one procedure."""
    instrument = whole.instrument
    return ProcedureView(
        title=procedure_title(whole),
        lead=plain(
            _(
                "Do every step. Safety steps are the ones that have hurt people;"
                " they are watched at sign-off."
            )
        ),
        not_here=_not_here(spot, whole),
        never=never_heat(spot, instrument) if instrument else None,
        notes=_notes(spot, whole),
        paper_note=plain(
            _(
                "Do every step. A black bar marks a safety step: those have hurt people."
                " Keep on what you wear until a step says something else."
            )
        ),
        picture=spot.picture(
            instrument.drawing or instrument.assembled,
            _("The parts of the {name}, taken apart").format(name=instrument.name),
            numbered_parts(instrument),
        )
        if instrument
        else None,
        facts=_headline(spot, whole),
        flow=flow_view(whole),
        ready=ready_note(spot, whole),
        words=StepWords(
            why=_("Why:"),
            safety=_("Safety step"),
            wear=_("Wear:"),
            needs=_("Have ready:"),
            practise=_("Practise this step:"),
        ),
        stages=_stages(spot, whole),
        values_heading=_("Values on this page"),
        value_lines=_value_lines(spot, whole),
        related_heading=_("From here"),
        related=_related(spot, whole),
        waivers=waiver_views(spot, whole.procedure.waive),
    )


def _not_here(spot: Spot, whole: WholeProcedure) -> FactView | None:
    """Return that a procedure cannot be done in this clinic, for want of its route."""
    route = route_not_had(spot.desk.content, whole)
    if route is None:
        return None
    said = _("{way}: not among the ways that this clinic has.").format(way=sentence(route.name))
    return FactView(label=_("Not possible here"), text=plain(said))


def _notes(spot: Spot, whole: WholeProcedure) -> tuple[Prose, ...]:
    instrument = whole.instrument
    if instrument is None:
        return ()
    notes: list[Prose] = []
    if instrument.model and instrument.applies_to:
        notes.append(
            (
                *plain(_("For the {model}. Marked: ").format(model=instrument.model)),
                *spot.prose(state(instrument.applies_to.marked)),
            )
        )
    elif instrument.model:
        notes.append(plain(_("For the {model}.").format(model=instrument.model)))
    for alike in instrument.look_alikes:
        other = spot.desk.content.instruments.get(alike.instrument)
        name = other.name if other else alike.instrument
        notes.append(
            (
                *plain(
                    _("Not for the {name}, which looks the same. ").format(
                        name=name[:1].lower() + name[1:]
                    )
                ),
                *spot.prose(alike.tell_apart),
            )
        )
    return tuple(notes)


def _headline(spot: Spot, whole: WholeProcedure) -> tuple[FactView, ...]:
    return present(
        *_level_facts(spot, whole),
        fact(
            _("About"),
            whole.about.text(),
            _("from first to last step, an estimate"),
        ),
        *_use_facts(spot, whole),
        fact(_("Vessel"), _vessel_name(spot, whole.procedure.vessel)),
    )


def _level_facts(spot: Spot, whole: WholeProcedure) -> tuple[FactView, ...]:
    """Return what the parts need and what the procedure gives; nothing without a route."""
    instrument = whole.instrument
    if instrument is None or whole.level is None or not whole.parts:
        return ()
    needed = spot.desk.instrument(instrument).needed
    least = max((needed[each.part].level for each in whole.parts), key=CARE_LEVELS.index)
    facts = [
        fact(
            _("Needs at least"),
            sentence(least),
            _("this procedure gives: {level}").format(level=whole.level),
        )
    ]
    if len(whole.parts) < len(instrument.parts):
        facts.append(
            fact(
                _("For these parts only"),
                sentence(listed([each.shown_name for each in whole.parts])),
                _("the other parts have a procedure of their own"),
            )
        )
    return tuple(facts)


def _use_facts(spot: Spot, whole: WholeProcedure) -> tuple[FactView, ...]:
    instrument = whole.instrument
    if instrument is None or whole.level is None:
        return ()
    limit = instrument.use_limit
    return (
        fact(
            _("Use limit"),
            spot.value_prose(limit.at) if limit else plain(_("No fixed number")),
            state(limit.counts) if limit else _("retire it by what you see"),
        ),
    )


def _vessel_name(spot: Spot, vessel: str | None) -> str:
    found = spot.desk.content.vessel(vessel) if vessel else None
    if found is None:
        return ""
    return found.name or found.vessel.replace("-", " ")


def flow_view(whole: WholeProcedure) -> FlowView | None:
    """Return the flow line of a procedure: its stages in working order, returns included.

    A task of a single stage has none: there is nowhere to go on it.
    """
    basins = []
    turns: dict[str, int] = {}
    for stage, time in zip(whole.procedure.stages, whole.stages_about, strict=True):
        turns[stage.stage] = turns.get(stage.stage, 0) + 1
        if time is not None:
            basins.append(
                BasinView(
                    label=_short_stage(stage.stage),
                    sublabel=_("about {time}").format(time=time.text()),
                    href=f"#{_stage_anchor(stage.stage, turns[stage.stage])}",
                )
            )
    if len(basins) < 2 and whole.route is None:
        return None
    label = (
        n_(
            "One stage, from point of use to storage",
            "{n} stages, from point of use to storage",
            len(basins),
        )
        if whole.route
        else n_("One stage of this task", "{n} stages of this task", len(basins))
    )
    return FlowView(label=label, basins=tuple(basins))


def _short_stage(name: str) -> str:
    return _("Inspection") if name == "inspection and maintenance" else sentence(name)


def _stage_anchor(name: str, turn: int) -> str:
    anchor = "stage-" + name.replace(" ", "-")
    return anchor if turn == 1 else f"{anchor}-{turn}"


def _stages(spot: Spot, whole: WholeProcedure) -> tuple[StageView, ...]:
    by_stage: dict[int, list[PlacedStep]] = {}
    for placed in whole.steps:
        by_stage.setdefault(id(placed.stage), []).append(placed)
    total = len(whole.steps)
    turns: dict[str, int] = {}
    views = []
    for stage in whole.procedure.stages:
        turns[stage.stage] = turns.get(stage.stage, 0) + 1
        placed_steps = by_stage.get(id(stage), [])
        views.append(
            StageView(
                anchor=_stage_anchor(stage.stage, turns[stage.stage]),
                name=sentence(stage.stage),
                note=_which_steps(placed_steps, total),
                steps=tuple(
                    step_view(spot, whole, each, before)
                    for before, each in zip([None, *placed_steps], placed_steps, strict=False)
                ),
                not_applicable=spot.prose(stage.not_applicable),
            )
        )
    return tuple(views)


def _which_steps(placed: list[PlacedStep], total: int) -> str:
    if not placed:
        return _("no step here")
    first, last = placed[0].number, placed[-1].number
    if first == last:
        return _("step {first} of {total}").format(first=first, total=total)
    return _("steps {first} to {last} of {total}").format(first=first, last=last, total=total)


def _value_lines(spot: Spot, whole: WholeProcedure) -> tuple[ValueLineView, ...]:
    figures = spot.desk.content.figures
    names: dict[str, None] = {}
    for placed in whole.steps:
        step = placed.step
        for reference in (
            step.hold,
            step.wait,
            step.strength,
            step.temperature,
            step.longest,
            step.hold.no_longer_than if step.hold else None,
        ):
            if reference is not None:
                names[reference.figure] = None
    return tuple(
        ValueLineView(
            value=(spot.value(name, figures[name]),),
            is_=spot.prose(figures[name].is_),
            source=plain(spot.basis(figures[name])),
        )
        for name in names
        if name in figures
    )


def _related(spot: Spot, whole: WholeProcedure) -> tuple[LinkView, ...]:
    links = []
    instrument = whole.instrument
    if instrument:
        links.append(
            LinkView(
                text=instrument.name,
                href=spot.link(f"instruments/{instrument.instrument}.html"),
                note=_("parts, what it tolerates, when to retire it"),
            )
        )
    if whole.steps and route_not_had(spot.desk.content, whole) is None:
        links.append(
            LinkView(
                text=_("Wall chart"),
                href=spot.link(f"print/wall-chart-{whole.procedure.procedure}.html"),
                note=_("one sheet, to print and hang up"),
            )
        )
    if spot.desk.watched(whole.procedure.procedure):
        links.append(
            LinkView(
                text=_("Observation sheet"),
                href=spot.link(f"print/observation-{whole.procedure.procedure}.html"),
                note=_("to print, tick and sign"),
            )
        )
    return tuple(links)
