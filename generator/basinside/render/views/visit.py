"""For a visit: what an auditor asks for, as far as the handbook holds it."""

from __future__ import annotations

from basinside.render.view_types import (
    FactView,
    LinkView,
    Prose,
    SectionView,
    SpanView,
    VisitView,
    plain,
)
from basinside.render.views.chemicals import agents_used
from basinside.render.views.chrome import edition_facts
from basinside.render.views.decisions import decided_sections
from basinside.render.views.incidents import contact_facts
from basinside.render.views.instrument import language_name
from basinside.render.views.policy import policy_facts
from basinside.render.views.posted import posted_prints
from basinside.render.views.spot import Spot, fact, present
from basinside.render.views.titles import procedure_title
from basinside.render.wording import _, listed, sentence


def visit_view(spot: Spot) -> VisitView:
    """Return the page for somebody who comes to see whether the work is done as it is written."""
    return VisitView(
        title=_("For a visit"),
        lead=plain(
            _(
                "What this handbook holds for somebody who comes to look: an auditor, the"
                " ministry, a neighbour clinic. What it does not hold is said at the end."
            )
        ),
        sections=(
            _edition(spot),
            _instructions(spot),
            _posted(spot),
            *decided_sections(spot),
            _chemicals(spot),
            _policy(spot),
            _logs(spot),
            _contacts(spot),
            _not_here(spot),
        ),
    )


def section(
    anchor: str,
    heading: str,
    facts: tuple[FactView, ...],
    empty: str,
    text: tuple[Prose, ...] = (),
    links: tuple[LinkView, ...] = (),
) -> SectionView:
    """Return a part of the page; one with nothing in it says so in a sentence."""
    return SectionView(
        anchor=anchor,
        heading=heading,
        text=text if facts or links else plain_each(empty),
        facts=facts,
        links=links,
    )


def plain_each(*sentences: str) -> tuple[Prose, ...]:
    """Return sentences as paragraphs, each that says something."""
    return tuple(plain(each) for each in sentences if each)


def _edition(spot: Spot) -> SectionView:
    handbook = spot.desk.content.handbook
    facts = (
        ()
        if handbook is None
        else present(
            fact(_("Handbook"), handbook.title, handbook.demonstration or ""),
            *edition_facts(spot),
            fact(_("Written in"), language_name(handbook.language)),
            fact(
                _("Staff read"),
                listed([language_name(each) for each in handbook.languages_read]),
            ),
            fact(_("Altitude"), handbook.clinic.altitude.text()),
        )
    )
    return section("edition", _("This edition"), facts, _("No handbook card was written."))


def _instructions(spot: Spot) -> SectionView:
    facts = []
    for instrument in spot.desk.content.instruments.values():
        held = instrument.instructions_held
        if instrument.label == "single use":
            said, note = _("For one use only: nothing is reprocessed."), ""
        elif held is None:
            said, note = _("None held: not in use."), ""
        else:
            said = sentence(held.where)
            note = _("in {languages}").format(
                languages=listed([language_name(each) for each in held.languages])
            )
        name = (
            _("{name} ({model})").format(name=instrument.name, model=instrument.model)
            if instrument.model
            else instrument.name
        )
        facts.append(fact(name, said, note))
    return section(
        "instructions",
        _("Makers' instructions: where they are"),
        tuple(facts),
        _("No instrument was written down."),
    )


def _posted(spot: Spot) -> SectionView:
    places: dict[str, list[Prose]] = {}
    for place, named in posted_prints(spot):
        places.setdefault(place, []).append((*named, *plain(". ")))
    return section(
        "posted",
        _("What hangs where"),
        tuple(
            fact(sentence(place), tuple(span for what in prints for span in what))
            for place, prints in places.items()
        ),
        _("Nothing is written down as hanging anywhere."),
    )


def _chemicals(spot: Spot) -> SectionView:
    facts = []
    for agent in agents_used(spot):
        check = agent.strength_check
        life = spot.value_prose(agent.life)
        facts.append(
            fact(
                agent.name,
                (
                    *(
                        spot.prose(check.how)
                        if check
                        else plain(_("No strength check is written."))
                    ),
                    *((*plain(_(" Used up within ")), *life, *plain(".")) if life else ()),
                    *plain(" "),
                    SpanView(
                        kind="link", text=_("Card"), href=spot.link(f"agents/{agent.agent}.html")
                    ),
                ),
            )
        )
    return section(
        "chemicals",
        _("Chemicals in use and how each is checked"),
        tuple(facts),
        _("No procedure uses a chemical."),
    )


def _policy(spot: Spot) -> SectionView:
    return section(
        "policy",
        _("Who may work alone: what is asked first"),
        policy_facts(spot),
        _("No policy is written."),
        text=plain_each(_("Nobody is called competent on a knowledge test alone.")),
    )


def _logs(spot: Spot) -> SectionView:
    """Return the papers that steps write in, and how long they are kept."""
    content = spot.desk.content
    found: dict[str, dict[str, None]] = {}
    for name in content.procedures:
        for placed in spot.desk.whole(name).steps:
            step = placed.step
            if step.action in {"record", "release", "count"}:
                for each in (*step.needs, *step.with_):
                    found.setdefault(each, {})[name] = None
    facts = [
        fact(
            sentence(content.equipment[each].name),
            listed([procedure_title(spot.desk.whole(name)) for name in names]),
        )
        for each, names in found.items()
        if each in content.equipment
    ]
    kept = content.handbook.retention if content.handbook else None
    if facts and kept:
        facts.append(fact(_("Kept for"), kept.text()))
    return section(
        "papers",
        _("Papers that the steps write in"),
        tuple(facts),
        _("No step writes in a log."),
        text=plain_each(_("Ask to see these at the place where the work is done.")),
    )


def _contacts(spot: Spot) -> SectionView:
    return section(
        "ask",
        _("Who may be asked"),
        contact_facts(spot),
        _("No contact is written down."),
    )


def _not_here(spot: Spot) -> SectionView:
    handbook = spot.desk.content.handbook
    who = handbook.responsible if handbook else _("one in charge")
    return SectionView(
        anchor="not-here",
        heading=_("What this handbook does not hold"),
        text=plain_each(
            _("No names and no patients. People appear by what they are in the clinic."),
            _(
                "No records of single loads, baths or tests. Those are in the logs, on paper,"
                " and the load number is in the clinic's own patient register."
            ),
            _(
                "No list of who may work alone. The signed completion records say it. Ask the {who}"
                " for them; the page “Examine” says whether one holds."
            ).format(who=who),
        ),
    )
