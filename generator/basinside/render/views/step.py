"""One step as it is read at the basin: the sentence, its one large value, and the rest."""

from __future__ import annotations

from basinside.model.derived import PlacedStep, WholeProcedure
from basinside.render.view_types import (
    DangerView,
    DecidedView,
    FactView,
    FigureView,
    LinkView,
    NoteView,
    Prose,
    SpanView,
    StepView,
    plain,
)
from basinside.render.views.spot import Spot, ended, fact, present, state
from basinside.render.views.step_lines import step_lines
from basinside.render.views.timers import timed
from basinside.render.views.titles import procedure_title
from basinside.render.views.waivers import waiver_views
from basinside.render.wording import _, listed, sentence


def step_view(
    spot: Spot, whole: WholeProcedure, placed: PlacedStep, before: PlacedStep | None
) -> StepView:
    """Return one step; ``before`` is the step before it in the same stage."""
    step = placed.step
    figure, source = _step_figure(spot, placed)
    do = spot.prose(step.do)
    return StepView(
        number=str(placed.number),
        anchor=step.step,
        do=do,
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
        facts=_step_facts(spot, whole, placed),
        timer=timed(spot, whole, placed) is not None,
        lines=step_lines(spot, whole, placed),
        lines_short=step.action == "take apart",
        decided=_decided(spot, step.choice),
        source=source,
        picture=spot.picture(step.picture, words_of(do)) if step.picture else None,
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


def _step_facts(spot: Spot, whole: WholeProcedure, placed: PlacedStep) -> tuple[FactView, ...]:
    """Return the short lines of a step; the value that is shown large is not said again."""
    step, hold, longest = placed.step, placed.step.hold, placed.step.longest
    large = hold or step.wait or step.strength or step.temperature or longest
    facts: list[FactView] = []
    if hold:
        facts.append(fact(_("The time starts:"), spot.prose(hold.from_ and state(hold.from_))))
        again = hold.if_interrupted and state(hold.if_interrupted)
        facts.append(fact(_("If interrupted:"), spot.prose(again)))
        longest_held = spot.value_prose(hold.no_longer_than)
        if longest_held:
            late = plain(_(". Longer? Rinse it, look for damage, and ask."))
            facts.append(fact(_("No longer than:"), (*longest_held, *late)))
    if step.strength and large is not step.strength:
        facts.append(fact(_("Strength:"), spot.value_prose(step.strength)))
    if step.temperature and large is not step.temperature:
        facts.append(fact(_("Temperature:"), spot.value_prose(step.temperature)))
    if longest and large is not longest:
        before = plain(_(" before {what}").format(what=longest.before))
        facts.append(fact(_("At the longest:"), (*spot.value_prose(longest), *before)))
    if step.parts_are:
        facts.append(fact(_("Parts:"), _parts_are(step.parts_are, whole)))
    if step.parts:
        names = listed([each.replace("-", " ") for each in step.parts])
        facts.append(fact(_("Only:"), sentence(names)))
    if step.water:
        facts.append(fact(_("Water:"), _water(step.water)))
    if step.wrap is not None:
        facts.append(fact(_("Pack:"), _("Wrapped") if step.wrap else _("Unwrapped")))
    if step.see and step.see in spot.desk.content.procedures:
        facts.append(fact(_("How:"), (_way_to(spot, step.see),)))
    if step.agent:
        facts.append(fact(_("Chemical:"), _agent(spot, step.agent)))
    return present(*facts)


def words_of(prose: Prose) -> str:
    """Return a sentence as plain words, for those who do not see the picture beside it."""
    return "".join(span.text for span in prose)


def _way_to(spot: Spot, procedure: str) -> SpanView:
    title = procedure_title(spot.desk.whole(procedure))
    return SpanView(kind="link", text=title, href=spot.link(f"procedures/{procedure}.html"))


def _parts_are(how: str, whole: WholeProcedure) -> str:
    """Return how the parts are; what nothing comes off lies open instead."""
    if how == "together":
        return _("Put together")
    comes_off = whole.instrument is None or bool(whole.instrument.take_apart)
    return _("Taken apart") if comes_off else _("Hinges wide open")


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
        link=LinkView(text=_("Who chose this, and why"), href=spot.link(f"choices.html#{choice}")),
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
