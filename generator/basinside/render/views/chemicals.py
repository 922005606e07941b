"""Chemicals: the list of all, the card of one, and how they are called in a sentence."""

from __future__ import annotations

from collections.abc import Iterable

from basinside.model.equipment import Agent
from basinside.render.hazard_statements import statement_words
from basinside.render.view_types import (
    AgentRowView,
    AgentsView,
    AgentView,
    FactView,
    LinkView,
    Prose,
    SpanView,
    plain,
)
from basinside.render.views.spot import Spot, fact, present, state
from basinside.render.views.titles import procedure_title
from basinside.render.views.waivers import waiver_views
from basinside.render.wording import _, listed, n_, sentence


def family_words(family: str) -> str:
    """Return a family of chemicals as people say it; another word stays as it is."""
    return {
        "aldehyde": _("any aldehyde (glutaraldehyde too)"),
        "peroxide": _("any peroxide"),
        "peracetic": _("peracetic acid"),
        "acid": _("any acid (toilet cleaner too)"),
        "enzyme": _("enzymatic detergent"),
        "lubricant": _("any lubricant"),
    }.get(family, family.replace("-", " "))


def chemical_span(spot: Spot, word: str) -> SpanView:
    """Return a chemical by its id, or a family of chemicals, linked to its card if it has one."""
    agents = spot.desk.content.agents
    found = agents.get(word)
    if found is None:
        of_family = [each for each in agents.values() if each.family == word]
        found = of_family[0] if len(of_family) == 1 else None
    if found is None:
        return SpanView(text=family_words(word))
    own = word in agents
    text = found.name[:1].lower() + found.name[1:] if own else family_words(word)
    return SpanView(kind="link", text=text, href=spot.link(f"agents/{found.agent}.html"))


def chemicals(spot: Spot, words: tuple[str, ...]) -> Prose:
    """Return chemicals as a list in a sentence, each linked to its card."""
    spans: list[SpanView] = []
    for n, word in enumerate(words):
        if n:
            spans.append(SpanView(text=_(" and ") if n == len(words) - 1 else ", "))
        span = chemical_span(spot, word)
        if n == 0:
            span = SpanView(kind=span.kind, text=sentence(span.text), href=span.href)
        spans.append(span)
    return tuple(spans)


def uses_of_agent(spot: Spot, agent: Agent) -> list[str]:
    """Return the procedures that use a chemical: in a step, or to lubricate a part."""
    return spot.desk.procedures_with.get(agent.agent, [])


def _kept_moist(spot: Spot, agent: Agent) -> list[str]:
    return [
        each.name[:1].lower() + each.name[1:]
        for each in spot.desk.content.instruments.values()
        if each.keep_moist_with and agent.agent in each.keep_moist_with.use
    ]


def _use_words(spot: Spot, agent: Agent) -> str:
    uses, moist = uses_of_agent(spot, agent), _kept_moist(spot, agent)
    said = []
    if uses:
        said.append(n_("in one procedure", "in {n} procedures", len(uses)))
    if moist:
        said.append(n_("to keep one instrument moist", "to keep {n} instruments moist", len(moist)))
    return sentence(listed(said)) if said else _("Not used here")


def _shelf(agent: Agent) -> str:
    product = agent.product
    if product is None:
        return ""
    strength = product.strength.text() if product.strength else ""
    return sentence(", ".join(filter(None, (product.kind, strength))))


def agents_view(spot: Spot) -> AgentsView:
    """Return the list of all chemicals."""
    return AgentsView(
        title=_("Chemicals"),
        lead=plain(
            _(
                "What may hurt you, and what it is for here. Open the card before you open the"
                " bottle. Read the label and the maker's safety sheet first."
            )
        ),
        rows=tuple(
            AgentRowView(
                anchor=name,
                link=LinkView(text=agent.name, href=spot.link(f"agents/{name}.html")),
                hazards=tuple(spot.sign("hazard", each) for each in agent.hazards),
                facts=present(
                    fact(
                        _("Signs:"),
                        "" if agent.hazards else _("None. Read the label all the same."),
                    ),
                    fact(_("Used:"), _use_words(spot, agent)),
                    fact(_("On the shelf:"), _shelf(agent)),
                    fact(_("Never with:"), _never(agent)),
                ),
            )
            for name, agent in spot.desk.content.agents.items()
        ),
    )


def _never(agent: Agent) -> str:
    words = [family_words(each) for each in agent.never_with]
    return state(listed(words)) if words else ""


def agent_view(spot: Spot, agent: Agent) -> AgentView:
    """Return the card of one chemical."""
    content = spot.desk.content
    uses = uses_of_agent(spot, agent)
    moist = _kept_moist(spot, agent)
    return AgentView(
        title=agent.name,
        lead=plain(_("Read the label and the maker's safety sheet first. They decide.")),
        hazards_heading=_("How it can hurt"),
        hazards=tuple(spot.sign("hazard", each) for each in agent.hazards),
        statements=tuple(fact(each, statement_words(each)) for each in agent.statements),
        statements_note=plain(
            _("What the label says by code. Wording: UN GHS, annex 3, from memory.")
        ),
        asks_heading=_("Ask the lead before you touch it"),
        asks=tuple(sentence(each) for each in agent.who_asks_first),
        never_heading=_("Never let it meet"),
        never=plain(_never(agent)),
        wear_heading=_("Wear"),
        wear=tuple(spot.sign("worn", each) for each in agent.wear),
        figures=tuple(
            each
            for each in (
                spot.figure(agent.life, _("use a made-up solution this long at the most")),
                spot.figure(agent.stock_life, _("keep what stands on the shelf this long")),
                spot.figure(agent.air_limit, _("no more than this in the air")),
            )
            if each
        ),
        facts_heading=_("Use and keep"),
        facts=_agent_facts(spot, agent),
        first_aid_heading=_("First aid"),
        first_aid=tuple(
            LinkView(text=content.incidents[each].name, href=spot.link(f"incidents.html#{each}"))
            for each in agent.first_aid
            if each in content.incidents
        ),
        used_heading=_("Used in"),
        used=tuple(
            LinkView(
                text=procedure_title(spot.desk.whole(name)),
                href=spot.link(f"procedures/{name}.html"),
            )
            for name in uses
        ),
        used_note=_used_note(uses, moist),
        waivers=waiver_views(spot, agent.waive),
    )


def _used_note(uses: list[str], moist: list[str]) -> Prose:
    if moist:
        return plain(_("Keeps moist: {instruments}.").format(instruments=listed(moist)))
    if uses:
        return ()
    return plain(
        _(
            "No procedure here uses it. The card is here because it may stand on a shelf, or come"
            " with a donation."
        )
    )


def _agent_facts(spot: Spot, agent: Agent) -> tuple[FactView, ...]:
    check = agent.strength_check
    return present(
        fact(_("On the shelf"), _shelf(agent)),
        fact(_("Before use"), spot.prose(agent.prepare)),
        fact(
            _("Strength check"),
            (
                *spot.prose(check.how),
                *(plain(_(" At least ")) if check.at_least else ()),
                *spot.value_prose(check.at_least),
                *(plain(".") if check.at_least else ()),
            ),
        )
        if check
        else None,
        fact(_("What it spoils"), spot.prose(agent.harms)),
        fact(_("Air"), spot.prose(agent.ventilation)),
        fact(_("Waste"), spot.prose(agent.waste)),
        fact(
            _("Source"),
            spot.citation(agent.source)
            or _("No source is named; what stands here is common practice."),
        ),
    )


def agents_used(spot: Spot) -> Iterable[Agent]:
    """Return the chemicals that some procedure here uses."""
    return (each for each in spot.desk.content.agents.values() if uses_of_agent(spot, each))
