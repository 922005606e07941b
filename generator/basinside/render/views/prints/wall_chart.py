"""The wall chart of a procedure: its short sentences, hanging on the flow line."""

from __future__ import annotations

from basinside.model.derived import PlacedStep, WholeProcedure
from basinside.render.view_types import Prose, plain
from basinside.render.view_types.prints import (
    ChartColumnView,
    ChartStageView,
    ChartStepView,
    ChartView,
    SheetView,
    WornView,
)
from basinside.render.views.partly import never_heat
from basinside.render.views.prints.frame import (
    breakable,
    foot,
    joined,
    notices,
    paper_prose,
    print_hint,
    unlinked,
    value_words,
)
from basinside.render.views.spot import Spot, state
from basinside.render.views.titles import procedure_title
from basinside.render.wording import _, listed, sentence


def wall_chart_view(spot: Spot, whole: WholeProcedure) -> SheetView:
    """Return the wall chart of one procedure."""
    instrument, name = whole.instrument, whole.procedure.procedure
    chart = spot.desk.derived.wall_charts[name]
    placed = {each.number: each for each in whole.steps}
    beside = dict(chart.beside)
    return SheetView(
        kind="chart",
        title=procedure_title(whole),
        lead=_lead(spot, whole),
        hint=print_hint(),
        warn=_for_which(spot, whole),
        drawing=spot.picture(
            instrument.drawing or instrument.assembled,
            _("The parts of the {name}, taken apart").format(name=instrument.name),
        )
        if instrument
        else None,
        notices=notices(spot),
        foot=foot(spot, "wall-chart", name, chemical=chart.chemical_contact),
        chart=ChartView(
            points=chart.points,
            worn_label=_("Wear, at step")
            if any(steps for _worn, steps in chart.worn)
            else _("Wear"),
            worn=tuple(
                WornView(sign=spot.sign("worn", each), steps=steps) for each, steps in chart.worn
            ),
            columns=tuple(
                ChartColumnView(
                    stages=_stages(
                        spot, [placed[n] for n in numbers], beside, before, named=chart.named
                    )
                )
                for numbers, before in zip(
                    chart.columns, (None, _last(placed, chart.columns[0])), strict=True
                )
                if numbers
            ),
        ),
    )


def _last(placed: dict[int, PlacedStep], numbers: tuple[int, ...]) -> PlacedStep | None:
    return placed[numbers[-1]] if numbers else None


def _stages(
    spot: Spot,
    steps: list[PlacedStep],
    beside: dict[int, str],
    before: PlacedStep | None,
    *,
    named: tuple[int, ...],
) -> tuple[ChartStageView, ...]:
    """Return the stages of one column; one that began in the column before says so."""
    groups: list[tuple[str, list[ChartStepView]]] = []
    last = before
    for n, placed in enumerate(steps):
        if n == 0 or last is None or placed.stage is not last.stage:
            name = _stage_name(placed.stage.stage)
            goes_on = n == 0 and last is not None and placed.stage is last.stage
            groups.append((_("{stage}, more").format(stage=name) if goes_on else name, []))
        groups[-1][1].append(
            ChartStepView(
                number=str(placed.number),
                text=breakable(paper_prose(spot, placed.step.wall or placed.step.do)),
                safety_word=_("Safety step") if placed.step.safety else "",
                beside=breakable(value_words(spot, beside.get(placed.number, ""))),
                danger=spot.sign("danger", placed.step.danger.kind) if placed.step.danger else None,
                danger_named=placed.number in named,
            )
        )
        last = placed
    return tuple(ChartStageView(name=name, steps=tuple(shown)) for name, shown in groups)


def _stage_name(name: str) -> str:
    return _("Inspection") if name == "inspection and maintenance" else sentence(name)


def _lead(spot: Spot, whole: WholeProcedure) -> Prose:
    """Return what the procedure gives, for which parts, how long it takes and in which vessel."""
    said = []
    if whole.level == "sterile" and whole.route is not None and whole.route.wrapped is False:
        said.append(_("Gives: sterile only when it comes out."))
    elif whole.level is not None:
        said.append(_("Gives: {level}.").format(level=whole.level))
    if whole.instrument and len(whole.parts) < len(whole.instrument.parts) and whole.parts:
        parts = listed([each.shown_name for each in whole.parts])
        said.append(_("Only for: {parts}.").format(parts=parts))
    said.append(_("About {time}.").format(time=whole.about.text()))
    vessel = spot.desk.content.vessel(whole.procedure.vessel) if whole.procedure.vessel else None
    if vessel is not None:
        said.append(_("Vessel: {vessel}.").format(vessel=vessel.name or vessel.vessel))
    said.append(_("Do every step. The heavy rule marks what has hurt people."))
    return plain(" ".join(said))


def _for_which(spot: Spot, whole: WholeProcedure) -> Prose:
    """Return what no heat may touch, for which model the chart is, and what it is mistaken for.

    What must never be heated is said first and of this instrument; what only looks like it has a
    sentence of its own, so that neither is read into the other.
    """
    instrument = whole.instrument
    if instrument is None:
        return ()
    said: list[Prose] = []
    never = never_heat(spot, instrument)
    if never is not None:
        said.append(joined(f"{never.label}. ", unlinked(never.text)))
    if instrument.model:
        said.append(plain(_("For the {model}.").format(model=instrument.model)))
    if instrument.applies_to:
        said.append(joined(_("Marked: "), paper_prose(spot, state(instrument.applies_to.marked))))
    for alike in instrument.look_alikes:
        other = spot.desk.content.instruments.get(alike.instrument)
        name = other.name if other else alike.instrument
        said.append(
            plain(_("Looks alike, but is not done by this chart: “{name}”.").format(name=name))
        )
    spaced = [each if n == 0 else joined(" ", each) for n, each in enumerate(said)]
    return joined(*spaced)
