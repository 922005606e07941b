"""Solution labels: several to a sheet, to cut out and stick on the basin."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from markupsafe import Markup

from basinside.model.equipment import Agent, Route
from basinside.render.view_types import BlankView, FactView, SignView, plain
from basinside.render.view_types.prints import LabelView, SheetView
from basinside.render.views.prints.frame import foot, notices, print_hint, unlinked
from basinside.render.views.spot import Spot, fact, present
from basinside.render.wording import _, sentence

LABELS_A_SHEET: Final = 8


@dataclass(frozen=True, slots=True, kw_only=True)
class Solution:
    """A solution that stands in a basin of this clinic: its chemical, and the way it serves."""

    agent: Agent
    route: Route


def solutions(spot: Spot) -> tuple[Solution, ...]:
    """Return the solutions that the clinic's own ways of working need."""
    content = spot.desk.content
    has = content.handbook.clinic.has if content.handbook else ()
    found = []
    for name in has:
        route = content.routes.get(name)
        agent = content.agents.get(route.agent) if route and route.agent else None
        if route and agent:
            found.append(Solution(agent=agent, route=route))
    return tuple(found)


def solution_label_view(spot: Spot) -> SheetView:
    """Return one sheet of labels, the clinic's solutions in turn."""
    own = (*(_of_basin(spot, each) for each in solutions(spot)), *_spilt(spot))
    each_one = -(-LABELS_A_SHEET // len(own))
    labels = [each for each in own for _copy in range(each_one)][:LABELS_A_SHEET]
    return SheetView(
        kind="labels",
        title=_("Labels for solutions"),
        lead=plain(_("Cut out. One on every basin and bottle. No label: throw it away.")),
        hint=print_hint(),
        notices=notices(spot),
        foot=foot(spot, "solution-label", ring="chemical-or-burn"),
        labels=tuple(labels),
    )


def _of_basin(spot: Spot, solution: Solution) -> LabelView:
    agent, route = solution.agent, solution.route
    check = agent.strength_check
    limit = route.strength or (check.at_least if check else None)
    return _label(
        spot,
        agent,
        _strength(spot, solution),
        present(
            fact(_("For"), route.name.lower()),
            fact(_("Good for"), unlinked(spot.value_prose(agent.life))),
            fact(_("Throw away below"), unlinked(spot.value_prose(limit))),
            fact(_("Bath at least"), unlinked(spot.value_prose(route.temperature)))
            if route.temperature
            else None,
        ),
    )


def _spilt(spot: Spot) -> tuple[LabelView, ...]:
    """Return the label of what is mixed for no way of working: the strength for a spill."""
    content = spot.desk.content
    serves = {each.strength.figure for each in content.routes.values() if each.strength}
    agent = next(
        (
            each
            for each in content.agents.values()
            if each.family == "chlorine" and each.product and each.product.kind == "liquid"
        ),
        None,
    )
    return tuple(
        _label(
            spot,
            agent,
            content.figures[own.figure].value.text(),
            present(
                fact(_("For"), _("spilt blood only")),
                fact(_("Good for"), unlinked(spot.value_prose(agent.life))),
            ),
        )
        for own in spot.desk.derived.amounts.ground.strengths
        if agent is not None and own.figure not in serves and own.figure in content.figures
    )


def _label(spot: Spot, agent: Agent, strength: str, facts: tuple[FactView, ...]) -> LabelView:
    handbook = spot.desk.content.handbook
    return LabelView(
        name=agent.name,
        strength=strength,
        signs=_signs(spot, agent),
        facts=facts,
        blanks=(
            BlankView(label=_("Made: day, hour"), width=2),
            BlankView(label=_("By"), width=1),
            BlankView(label=_("Throw away: day, hour"), width=2),
            BlankView(label=_("Strip"), width=1),
        ),
        small=_("Edition {edition}. Not for drinking. Never mix.").format(
            edition=handbook.edition if handbook else ""
        ),
    )


def _signs(spot: Spot, agent: Agent) -> tuple[SignView, ...]:
    """Return the signs of all its hazards; those with the same drawing are one sign."""
    by_drawing: dict[Markup, list[str]] = {}
    for each in agent.hazards:
        sign = spot.sign("hazard", each)
        by_drawing.setdefault(sign.svg, []).append(each)
    return tuple(
        SignView(svg=svg, word=sentence(", ".join(words))) for svg, words in by_drawing.items()
    )


def _strength(spot: Spot, solution: Solution) -> str:
    """Return how strong it is: chlorine as it is mixed, anything else as its bottle says."""
    agent, route = solution.agent, solution.route
    figures = spot.desk.content.figures
    mixed = figures.get(route.strength.figure) if route.strength else None
    sold = agent.product.strength if agent.product else None
    if sold is not None and agent.family != "chlorine":
        return sold.text()
    return mixed.value.text() if mixed else ""
