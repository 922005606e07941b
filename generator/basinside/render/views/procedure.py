"""Procedures: the page that is read at the basin and printed as a job aid."""

from __future__ import annotations

from basinside.model.derived import PlacedStep, WholeProcedure
from basinside.render.view_types import (
    BasinView,
    DangerView,
    DecidedView,
    FactView,
    FigureView,
    FlowView,
    LinkView,
    NoteView,
    ProcedureView,
    Prose,
    SpanView,
    StageView,
    StepView,
    StepWords,
    ValueLineView,
    plain,
)
from basinside.render.views.spot import Spot, ended, fact, present, state
from basinside.render.views.step_lines import step_lines
from basinside.render.views.waivers import waiver_views
from basinside.render.wording import _, listed, n_, sentence


def procedure_title(whole: WholeProcedure) -> str:
    """Return the title of a procedure: what is done to which instrument."""
    if whole.procedure.title:
        return whole.procedure.title
    name = whole.instrument.name if whole.instrument else whole.procedure.instrument
    route = whole.route.name if whole.route else whole.procedure.route
    return _("{instrument}: {route}").format(instrument=name, route=route[:1].lower() + route[1:])


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
        notes=_notes(spot, whole),
        paper_note=plain(_("Keep on what you wear until a step says something else.")),
        picture=spot.picture(
            instrument.drawing or instrument.assembled,
            _("The parts of the {name}, taken apart").format(name=instrument.name),
        )
        if instrument
        else None,
        facts=_headline(spot, whole),
        flow=flow_view(whole),
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
    instrument = whole.instrument
    if instrument is None or whole.level is None:
        return ()
    limit = instrument.use_limit
    return present(
        fact(
            _("Needs at least"),
            sentence(spot.desk.instrument(instrument).highest),
            _("this procedure gives: {level}").format(level=whole.level),
        ),
        fact(
            _("About"),
            whole.about.text(),
            _("from first to last step, an estimate"),
        ),
        fact(
            _("Use limit"),
            spot.value_prose(limit.at) if limit else plain(_("No fixed number")),
            state(limit.counts) if limit else _("retire it by what you see"),
        ),
        fact(_("Vessel"), _vessel_name(spot, whole.procedure.vessel)),
    )


def _vessel_name(spot: Spot, vessel: str | None) -> str:
    found = spot.desk.content.vessel(vessel) if vessel else None
    if found is None:
        return ""
    return found.name or found.vessel.replace("-", " ")


def flow_view(whole: WholeProcedure) -> FlowView:
    """Return the flow line of a procedure: its stages in working order, returns included."""
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
    return FlowView(
        label=n_(
            "One stage, from point of use to storage",
            "{n} stages, from point of use to storage",
            len(basins),
        ),
        basins=tuple(basins),
    )


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


def step_view(
    spot: Spot, whole: WholeProcedure, placed: PlacedStep, before: PlacedStep | None
) -> StepView:
    """Return one step; ``before`` is the step before it in the same stage."""
    step = placed.step
    figure, source = _step_figure(spot, placed)
    return StepView(
        number=str(placed.number),
        anchor=step.step,
        do=spot.prose(step.do),
        why=spot.prose(step.why),
        safety=step.safety,
        danger=DangerView(
            sign=spot.sign("danger", step.danger.kind), say=spot.prose(step.danger.say)
        )
        if step.danger
        else None,
        wear=tuple(spot.sign("worn", each) for each in placed.wear),
        wear_same=before is not None and placed.wear == before.wear,
        needs=_needs(spot, placed),
        figure=figure,
        facts=_step_facts(spot, placed),
        lines=step_lines(spot, whole.instrument, placed),
        lines_short=step.action == "take apart",
        decided=_decided(spot, step.choice),
        source=source,
        practise=_practise(spot, whole, placed),
        waivers=waiver_views(spot, step.waive),
    )


def _step_figure(spot: Spot, placed: PlacedStep) -> tuple[FigureView | None, NoteView | None]:
    """Return the one value that is shown large at a step: the first it has, in this order."""
    step, longest = placed.step, placed.step.longest
    for reference, caption in (
        (step.hold, _("hold this long")),
        (step.wait, _("wait this long")),
        (step.strength, _("this strong")),
        (step.temperature, _("this hot")),
        (longest, _("at the longest, before {what}")),
    ):
        if reference is not None:
            figure = spot.desk.content.figures.get(reference.figure)
            if figure is not None:
                said = caption.format(what=longest.before if longest else "")
                return spot.step_figure(reference.figure, figure, said)
    return None, None


def _step_facts(spot: Spot, placed: PlacedStep) -> tuple[FactView, ...]:
    """Return the short lines of a step; the value that is shown large is not said again."""
    step, hold, longest = placed.step, placed.step.hold, placed.step.longest
    large = hold or step.wait or step.strength or step.temperature or longest
    facts: list[FactView] = []
    if hold:
        facts.append(fact(_("The time starts:"), spot.prose(hold.from_ and state(hold.from_))))
        again = hold.if_interrupted and state(hold.if_interrupted)
        facts.append(fact(_("If interrupted:"), spot.prose(again)))
        facts.append(fact(_("No longer than:"), spot.value_prose(hold.no_longer_than)))
    if step.strength and large is not step.strength:
        facts.append(fact(_("Strength:"), spot.value_prose(step.strength)))
    if step.temperature and large is not step.temperature:
        facts.append(fact(_("Temperature:"), spot.value_prose(step.temperature)))
    if longest and large is not longest:
        before = plain(_(" before {what}").format(what=longest.before))
        facts.append(fact(_("At the longest:"), (*spot.value_prose(longest), *before)))
    if step.parts_are:
        apart = _("Taken apart") if step.parts_are == "apart" else _("Put together")
        facts.append(fact(_("Parts:"), apart))
    if step.parts:
        names = listed([each.replace("-", " ") for each in step.parts])
        facts.append(fact(_("Only:"), sentence(names)))
    if step.water:
        facts.append(fact(_("Water:"), _water(step.water)))
    if step.wrap is not None:
        facts.append(fact(_("Pack:"), _("Wrapped") if step.wrap else _("Unwrapped")))
    if step.agent:
        facts.append(fact(_("Chemical:"), _agent(spot, step.agent)))
    return present(*facts)


def _water(water: str) -> str:
    if water == "boiled":
        return _("Boiled and cooled water")
    return _("Sterile water") if water == "sterile" else _("Drinking water")


def _agent(spot: Spot, agent: str | None) -> Prose:
    found = spot.desk.content.agents.get(agent or "")
    if found is None:
        return ()
    href = spot.link(f"agents/{found.agent}.html")
    return (SpanView(kind="link", text=found.name, href=href),)


def _needs(spot: Spot, placed: PlacedStep) -> tuple[str, ...]:
    step, equipment = placed.step, spot.desk.content.equipment
    names = [each for each in (step.in_, *step.with_, *step.needs) if each]
    return tuple(
        dict.fromkeys(equipment[each].name if each in equipment else each for each in names)
    )


def _decided(spot: Spot, choice: str | None) -> DecidedView | None:
    found = spot.desk.content.choices.get(choice) if choice else None
    if found is None:
        return None
    return DecidedView(
        word=_("Here:"),
        text=(*spot.prose(sentence(found.is_)), *plain(": "), *spot.prose(ended(found.chosen))),
        link=LinkView(text=_("Who chose this, and why"), href=spot.link(f"values.html#{choice}")),
    )


def _practise(spot: Spot, whole: WholeProcedure, placed: PlacedStep) -> tuple[LinkView, ...]:
    asked = spot.desk.practice_about(f"{whole.procedure.procedure}/{placed.step.step}")
    return tuple(
        LinkView(
            text=_("question {n}").format(n=n + 1),
            href=spot.link(f"self-tests/{each.topic}.html#{each.item.item}"),
        )
        for n, each in enumerate(asked)
    )


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
    links.append(
        LinkView(
            text=_("Observation sheet"),
            href=spot.link(f"print/observation-{whole.procedure.procedure}.html"),
            note=_("to print, tick and sign"),
        )
    )
    return tuple(links)
