"""Values, sources, chemicals, and what to do when something went wrong."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import PurePosixPath

from basinside.model.equipment import Agent, Incident
from basinside.model.figure import Choice, Figure
from basinside.model.prose import references as prose_references
from basinside.model.words import BASES, BASES_WITHOUT_SOURCE
from basinside.render.view_types import (
    AgentView,
    ChoiceView,
    FactView,
    IncidentsView,
    IncidentView,
    LinkView,
    Prose,
    SourcesView,
    SourceView,
    ValueGroupView,
    ValuesView,
    ValueView,
    plain,
)
from basinside.render.views.spot import Spot, basis_words, day_words, fact, present, state
from basinside.render.views.titles import procedure_title
from basinside.render.views.waivers import waiver_views
from basinside.render.wording import _, listed, n_, sentence


def values_view(spot: Spot) -> ValuesView:
    """Return the page of every value and every choice."""
    used = uses_of_values(spot)
    groups: dict[str, list[ValueView]] = {}
    for name, figure in spot.desk.content.figures.items():
        subject = PurePosixPath(figure.place.file).stem
        groups.setdefault(subject, []).append(_value(spot, name, figure, used))
    return ValuesView(
        title=_("Values"),
        lead=plain(
            _(
                "Every time, temperature, strength and limit of this handbook stands here once,"
                " with its source. Pages show it from here."
            )
        ),
        groups=tuple(
            ValueGroupView(
                anchor=f"about-{name}", heading=sentence(name.replace("-", " ")), rows=tuple(rows)
            )
            for name, rows in groups.items()
        ),
        choices_heading=_("Where sources differ, and what we chose"),
        choices_lead=plain(_("Two people chose, and a day is set to look again.")),
        choices=tuple(
            _choice(spot, name, choice) for name, choice in spot.desk.content.choices.items()
        ),
    )


def _value(spot: Spot, name: str, figure: Figure, used: dict[str, list[LinkView]]) -> ValueView:
    return ValueView(
        anchor=name,
        figure=spot.shown_figure(figure, ""),
        is_=spot.prose(state(figure.is_)),
        facts=present(
            fact(_("Source"), spot.basis(figure)),
            fact(_("The source says"), _source_says(figure)),
            fact(_("Another view"), spot.prose(figure.other_view)),
            fact(_("Checked"), day_words(figure.checked) if figure.checked else ""),
        ),
        used_label=n_("Used in one place", "Used in {n} places", len(used.get(name, ()))),
        used=tuple(used.get(name, ())),
        waivers=waiver_views(spot, figure.waive),
    )


def _source_says(figure: Figure) -> str:
    says = figure.source_says
    if says is None:
        return ""
    if says.at_least is not None:
        return _("at least {value}").format(value=says.at_least.text())
    if says.at_most is not None:
        return _("at most {value}").format(value=says.at_most.text())
    if says.exactly is not None:
        return _("exactly {value}").format(value=says.exactly.text())
    if says.between is not None:
        low, high = says.between
        return _("between {low} and {high}").format(low=low.text(), high=high.text())
    return ""


def _choice(spot: Spot, name: str, choice: Choice) -> ChoiceView:
    return ChoiceView(
        anchor=name,
        is_=spot.prose(sentence(choice.is_)),
        chosen=fact(_("Here"), spot.prose(sentence(choice.chosen)), spot.citation(choice.source)),
        because=fact(_("Because"), spot.prose(choice.because)),
        others=tuple(
            fact(
                _("The other view"),
                spot.prose(other.what),
                spot.citation(other.source) or (basis_words(other.basis) if other.basis else ""),
            )
            for other in choice.not_chosen
        ),
        facts=present(
            fact(_("Chosen by"), sentence(listed(tuple(filter(None, (choice.by, choice.second)))))),
            fact(_("On"), day_words(choice.on)),
            fact(_("Look again"), day_words(choice.look_again) if choice.look_again else ""),
        ),
    )


def uses_of_values(spot: Spot) -> dict[str, list[LinkView]]:
    """Return, for each value, the pages that hold to it, each once."""
    found: dict[str, dict[str, str]] = {}
    for name, label, target in _uses(spot):
        found.setdefault(name, {}).setdefault(target, label)
    return {
        name: [LinkView(text=label, href=spot.link(target)) for target, label in targets.items()]
        for name, targets in found.items()
    }


def _uses(spot: Spot) -> Iterator[tuple[str, str, str]]:
    content = spot.desk.content
    for name in content.procedures:
        whole = spot.desk.whole(name)
        title = procedure_title(whole)
        for placed in whole.steps:
            step = placed.step
            target = f"procedures/{name}.html#{step.step}"
            label = _("{title}, step {n}").format(title=title, n=placed.number)
            references = [step.hold, step.wait, step.strength, step.temperature, step.longest]
            if step.hold:
                references.append(step.hold.no_longer_than)
            for reference in references:
                if reference is not None:
                    yield reference.figure, label, target
            for text in (step.do, step.why or "", step.wall or ""):
                for mentioned in prose_references(text):
                    yield mentioned.figure, label, target
    for agent in content.agents.values():
        if agent.life:
            yield agent.life.figure, agent.name, f"agents/{agent.agent}.html"
    for incident in content.incidents.values():
        for reference in (incident.wait, incident.within):
            if reference is not None:
                yield reference.figure, incident.name, f"incidents.html#{incident.incident}"


def sources_view(spot: Spot) -> SourcesView:
    """Return the page of sources, and of what has none."""
    content = spot.desk.content
    used: dict[str, list[LinkView]] = {}
    for name, figure in content.figures.items():
        if figure.source:
            source = figure.source.split(" ", 1)[0]
            used.setdefault(source, []).append(
                LinkView(text=figure.is_, href=spot.link(f"values.html#{name}"))
            )
    return SourcesView(
        title=_("Sources"),
        lead=plain(
            _(
                "The manufacturer's instructions and local policy come first. These are the"
                " documents behind the values, and where our copy is."
            )
        ),
        sources=tuple(
            SourceView(
                anchor=name,
                title=source.title,
                facts=present(
                    fact(_("By"), source.by),
                    fact(_("Year"), source.year or ""),
                    fact(_("Held"), sentence(source.held or _("no copy held here"))),
                    fact(_("Address"), source.address or ""),
                ),
                used_label=n_("One value from it", "{n} values from it", len(used.get(name, ()))),
                used=tuple(used.get(name, ())),
            )
            for name, source in content.sources.items()
        ),
        bases_heading=_("What a value can stand on"),
        bases=tuple(fact(sentence(each), _means(each)) for each in BASES),
        unsourced_heading=_("Values without a published source"),
        unsourced=tuple(
            LinkView(
                text=figure.is_,
                href=spot.link(f"values.html#{name}"),
                note=basis_words(figure.basis),
            )
            for name, figure in content.figures.items()
            if figure.basis in BASES_WITHOUT_SOURCE
        ),
    )


def _means(basis: str) -> str:
    return {
        "manufacturer": _("The maker's instructions for this very model say it."),
        "published": _("A guideline, standard or study says it, and we read it there."),
        "published (read second-hand)": _("We read it where another text repeats it."),
        "computed": _("Worked out from a published formula and our own values."),
        "local policy": _("Decided in this clinic, with names and a day to look again."),
        "common practice": _("Widely done; we know of no published source."),
        "from memory": _("Written from memory; still to be checked against a source."),
    }[basis]


def agent_view(spot: Spot, agent: Agent) -> AgentView:
    """Return the card of one chemical."""
    content = spot.desk.content
    product = agent.product
    families = {
        "peracetic": _("peracetic acid"),
        "acid": _("any acid (toilet cleaner too)"),
    }
    check = agent.strength_check
    used = [
        LinkView(
            text=procedure_title(spot.desk.whole(name)),
            href=spot.link(f"procedures/{name}.html"),
        )
        for name in content.procedures
        if any(placed.step.agent == agent.agent for placed in spot.desk.whole(name).steps)
    ]
    life = spot.figure(agent.life, _("use a made-up solution this long at the most"))
    return AgentView(
        title=agent.name,
        lead=plain(_("Read the label and the maker's safety sheet first. They decide.")),
        hazards_heading=_("How it can hurt"),
        hazards=tuple(spot.sign("hazard", each) for each in agent.hazards),
        never_heading=_("Never let it meet"),
        never=plain(
            state(listed([families.get(each, each) for each in agent.never_with]))
            if agent.never_with
            else ""
        ),
        wear_heading=_("Wear"),
        wear=tuple(spot.sign("worn", each) for each in agent.wear),
        facts=present(
            fact(
                _("On the shelf"),
                sentence(
                    ", ".join(
                        filter(
                            None,
                            (product.kind, product.strength.text() if product.strength else ""),
                        )
                    )
                ),
            )
            if product
            else None,
            fact(_("Air"), spot.prose(agent.ventilation)),
            fact(
                _("Strength check"),
                (
                    *spot.prose(check.how),
                    *(plain(" " + _("At least ")) if check.at_least else ()),
                    *spot.value_prose(check.at_least),
                    *(plain(".") if check.at_least else ()),
                ),
            )
            if check
            else None,
            fact(_("Waste"), spot.prose(agent.waste)),
            fact(_("Ask the lead first"), sentence(listed(agent.who_asks_first))),
            fact(_("Source"), spot.citation(agent.source)),
        ),
        figures=(life,) if life else (),
        first_aid_heading=_("First aid"),
        first_aid=tuple(
            LinkView(text=content.incidents[each].name, href=spot.link(f"incidents.html#{each}"))
            for each in agent.first_aid
            if each in content.incidents
        ),
        used_heading=_("Used in"),
        used=tuple(used),
        waivers=waiver_views(spot, agent.waive),
    )


def incidents_view(spot: Spot) -> IncidentsView:
    """Return the page that is read in a hurry."""
    content = spot.desk.content
    return IncidentsView(
        title=_("Something went wrong"),
        lead=plain(_("Find what happened. Do the first minute now. Then ring.")),
        jump_label=_("What happened?"),
        jump=tuple(
            LinkView(text=each.name, href=f"#{each.incident}")
            for each in content.incidents.values()
        ),
        incidents=tuple(_incident(spot, each) for each in content.incidents.values()),
        contacts_heading=_("Whom to ring"),
        contacts=contact_facts(spot),
    )


def contact_facts(spot: Spot) -> tuple[FactView, ...]:
    """Return the people to ring, by day and by night."""
    handbook = spot.desk.content.handbook
    return tuple(
        fact(
            sentence(each.contact.replace("-", " ")),
            sentence(each.who),
            _("By day: {day}. By night: {night}.").format(day=each.day, night=each.night),
        )
        for each in (handbook.contacts if handbook else ())
    )


def _incident(spot: Spot, incident: Incident) -> IncidentView:
    handbook = spot.desk.content.handbook
    contact = next(
        (
            each
            for each in (handbook.contacts if handbook else ())
            if each.contact == incident.contact
        ),
        None,
    )
    within: Prose = spot.value_prose(incident.within)
    return IncidentView(
        anchor=incident.incident,
        name=incident.name,
        first_word=_("First minute"),
        first_minute=spot.prose(incident.first_minute),
        wait=spot.figure(incident.wait),
        then=fact(_("Then"), spot.prose(incident.then)),
        ring=present(
            fact(
                _("Ring"),
                sentence(contact.who),
                _("By day: {day}. By night: {night}.").format(day=contact.day, night=contact.night),
            )
            if contact
            else None,
            fact(_("How soon"), (*plain(_("within ")), *within) if within else ()),
        ),
        source=plain(_("Source: {source}").format(source=spot.citation(incident.source)))
        if incident.source
        else (),
    )
