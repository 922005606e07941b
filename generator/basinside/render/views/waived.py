"""Where each waiver of the handbook holds, in words and as an address, and the page of all."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from basinside.model.entry import Waiver
from basinside.model.equipment import Agent, Equipment, Incident, Route
from basinside.model.figure import Figure, Source
from basinside.model.handbook import Handbook
from basinside.model.instrument import Instrument, Part
from basinside.model.procedure import Procedure, Step
from basinside.model.quiz import Assessment, Item, Observation
from basinside.model.waived import Waived
from basinside.render.view_types import LinkView, Prose, WaiversView, plain
from basinside.render.views.spot import Spot
from basinside.render.views.titles import procedure_title
from basinside.render.views.waivers import waiver_view
from basinside.render.wording import _, n_, sentence


def waivers_view(spot: Spot) -> WaiversView:
    """Return the page of every waiver; one that has ended is marked by the page's script."""
    return WaiversView(
        title=_("Waivers"),
        lead=plain(
            _(
                "A waiver lets a rule rest at one place for a while. Two people agree to it, say"
                " why, and name its last day."
            )
        ),
        notes=_notes(spot),
        waivers=tuple(
            waiver_view(spot, waiver, where=where) for where, waiver in placed_waivers(spot)
        ),
    )


def _notes(spot: Spot) -> tuple[Prose, ...]:
    hidden = sum(each.sealed for each in spot.desk.waived)
    said = []
    if not spot.desk.waived:
        said.append(_("Nothing is waived. No rule rests anywhere in this handbook."))
    if hidden:
        said.append(
            n_(
                "One more waiver stands at a question of an assessment, which stays sealed.",
                "{n} more waivers stand at questions of assessments, which stay sealed.",
                hidden,
            )
        )
    return tuple(plain(each) for each in said)


def placed_waivers(spot: Spot) -> Iterator[tuple[LinkView, Waiver]]:
    """Yield each waiver with where it holds; those of sealed questions stay sealed."""
    for each in spot.desk.waived:
        if not each.sealed:
            yield _where(spot, each), each.waiver


def _where(spot: Spot, each: Waived) -> LinkView:
    text, target = _named(spot, each)
    return LinkView(text=text, href=spot.link(target) if target else "")


def _named(spot: Spot, each: Waived) -> tuple[str, str]:
    """Return what the entry is called, and its address; none for what has no page."""
    match each.owner, each.within:
        case Handbook(title=title), _within:
            return title, "index.html"
        case Part(part=part) as owner, Instrument() as instrument:
            name = _("{instrument}: {part}").format(
                instrument=instrument.name, part=owner.shown_name
            )
            return name, f"instruments/{instrument.instrument}.html#{part}"
        case Step(step=step), Procedure(procedure=name):
            return _step(spot, name, step), f"procedures/{name}.html#{step}"
        case Procedure(procedure=name), _within:
            return procedure_title(spot.desk.whole(name)), f"procedures/{name}.html"
        case owner, _within:
            return _one(spot, owner)


def _step(spot: Spot, procedure: str, step: str) -> str:
    whole = spot.desk.whole(procedure)
    number = next((each.number for each in whole.steps if each.step.step == step), "")
    return _("{title}, step {n}").format(title=procedure_title(whole), n=number)


def _one(spot: Spot, owner: Any) -> tuple[str, str]:
    content = spot.desk.content
    match owner:
        case Figure(is_=said):
            return sentence(spot.words(said)), f"values.html#{_key(content.figures, owner)}"
        case Source(title=title):
            return title, f"sources.html#{_key(content.sources, owner)}"
        case Agent(name=name, agent=agent):
            return name, f"agents/{agent}.html"
        case Route(name=name, route=route):
            return name, f"routes.html#{route}"
        case Incident(name=name, incident=incident):
            return name, f"incidents.html#{incident}"
        case Instrument(name=name, instrument=instrument):
            return name, f"instruments/{instrument}.html"
        case Equipment(name=name):
            return sentence(name), ""
        case Observation(observation=name):
            return _observation(spot, name)
        case Assessment(title=title):
            return _("Assessment “{title}”").format(title=title), ""
        case Item(item=item):
            asked = next(each for each in content.items() if each.item is owner)
            return _("Self-test question {id}").format(id=item), f"self-tests/{asked.topic}.html"
    raise TypeError(f"{type(owner).__name__} has no waivers")


def _observation(spot: Spot, name: str) -> tuple[str, str]:
    if name not in spot.desk.content.procedures:
        return name, ""
    title = procedure_title(spot.desk.whole(name))
    said = _("Observation checklist: {title}").format(title=title)
    return said, f"print/observation-{name}.html" if spot.desk.watched(name) else ""


def _key(mapping: Mapping[str, Any], owner: object) -> str:
    return next(name for name, each in mapping.items() if each is owner)
