"""What can be found, place by place, and the page that finds it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any

from basinside.model.derived import WholeProcedure
from basinside.model.procedure import Step
from basinside.render.search_index import Entry, Page, search_index
from basinside.render.view_types import SearchView, plain
from basinside.render.views.amounts import amount_places
from basinside.render.views.chrome import navigation
from basinside.render.views.rules import group_title, groups
from basinside.render.views.spot import Spot, state
from basinside.render.views.titles import procedure_title
from basinside.render.wording import _, sentence


def search_view(_spot: Spot) -> SearchView:
    """Return the page with the box."""
    return SearchView(
        title=_("Search"),
        lead=plain(_("Write a word or its beginning. Each result leads to the step.")),
        without_script=plain(
            _(
                "Searching needs a script, and this browser runs none. Procedures and reference"
                " have lists of all that is here."
            )
        ),
    )


def folder_index(spot: Spot) -> dict[str, Any]:
    """Return the index of the whole folder, as the search page reads it."""
    words = spot.desk.content.words.values()
    return search_index(_entries(spot), ((each.word, *each.also) for each in words))


def _entries(spot: Spot) -> Iterator[Entry]:
    """Yield every place: first what helps in a hurry, then what is done, then what is behind it."""
    yield from _incidents(spot)
    yield from _procedures(spot)
    yield from _instruments(spot)
    yield from _amounts(spot)
    yield from _chemicals(spot)
    yield from _routes(spot)
    yield from _values(spot)
    yield from _words(spot)
    yield from _topics(spot)
    yield from _ways_on(spot)
    yield from _standing(spot)


def _said(spot: Spot, *texts: str | None) -> str:
    """Return sentences as they are read on the page."""
    return " ".join(spot.words(each) for each in texts if each)


def _procedures(spot: Spot) -> Iterator[Entry]:
    for name in spot.desk.content.procedures:
        whole = spot.desk.whole(name)
        page = Page(
            href=f"procedures/{name}.html", name=procedure_title(whole), kind=_("Procedure")
        )
        yield Entry(page=page, title=page.name)
        for placed in whole.steps:
            step = placed.step
            danger = step.danger.say if step.danger else None
            held = (step.hold.from_, step.hold.if_interrupted) if step.hold else ()
            yield Entry(
                page=page,
                title=_said(spot, step.do),
                text=_said(spot, step.wall, step.why, danger, *held, *_own_lines(whole, step)),
                anchor=step.step,
            )


def _own_lines(whole: WholeProcedure, step: Step) -> Iterator[str | None]:
    """Yield what the instrument itself says at a step: its test, how it is lubricated."""
    instrument = whole.instrument
    if instrument is None:
        return
    if step.action == "test":
        for line in instrument.function_test:
            yield from (line.do, line.expect, line.if_not)
    elif step.action == "lubricate":
        for part in whole.parts:
            if part.lubricate:
                yield from (part.lubricate.amount, part.lubricate.when, part.lubricate.never)


def _instruments(spot: Spot) -> Iterator[Entry]:
    for name, instrument in spot.desk.content.instruments.items():
        page = Page(href=f"instruments/{name}.html", name=instrument.name, kind=_("Instrument"))
        marked = instrument.applies_to.marked if instrument.applies_to else None
        yield Entry(
            page=page,
            title=instrument.name,
            also=" ".join(filter(None, (instrument.model, *instrument.units))),
            text=_said(spot, marked, instrument.found_on_the_shelf),
        )
        for part in instrument.parts:
            signs = (each.sign for each in part.retire_when)
            yield Entry(
                page=page,
                title=sentence(part.shown_name),
                text=_said(spot, *signs),
                anchor=part.part,
            )


def _incidents(spot: Spot) -> Iterator[Entry]:
    page = Page(href="incidents.html", name=_("Something went wrong"), kind=_("First aid and more"))
    for each in spot.desk.content.incidents.values():
        text = _said(spot, each.first_minute, each.then)
        yield Entry(page=page, title=each.name, text=text, anchor=each.incident)


def _amounts(spot: Spot) -> Iterator[Entry]:
    page = Page(href="amounts.html", name=_("Amounts and times"), kind=_("Calculator"))
    for anchor, heading, lead in amount_places() if spot.desk.content.handbook else ():
        yield Entry(page=page, title=heading, text=lead, anchor=anchor)


def _chemicals(spot: Spot) -> Iterator[Entry]:
    for name, agent in spot.desk.content.agents.items():
        page = Page(href=f"agents/{name}.html", name=agent.name, kind=_("Chemical"))
        check = agent.strength_check.how if agent.strength_check else None
        texts = (
            *(agent.prepare, agent.harms, agent.ventilation, agent.waste, check),
            *(*agent.never_with, *agent.hazards, *agent.who_asks_first),
        )
        yield Entry(page=page, title=agent.name, also=agent.family, text=_said(spot, *texts))


def _routes(spot: Spot) -> Iterator[Entry]:
    page = Page(href="routes.html", name=_("Ways of reprocessing"), kind=_("Reference"))
    for name, route in spot.desk.content.routes.items():
        yield Entry(page=page, title=route.name, text=route.level, anchor=name)


def _values(spot: Spot) -> Iterator[Entry]:
    content = spot.desk.content
    page = Page(href="values.html", name=_("Values"), kind=_("Reference"))
    for name, figure in content.figures.items():
        title = f"{state(figure.is_)} {figure.value.text()}"
        yield Entry(page=page, title=title, text=spot.citation(figure.source), anchor=name)
    page = Page(href="choices.html", name=_("Choices"), kind=_("Reference"))
    for name, choice in content.choices.items():
        text = _said(spot, choice.chosen, choice.because)
        yield Entry(page=page, title=_said(spot, state(choice.is_)), text=text, anchor=name)


def _words(spot: Spot) -> Iterator[Entry]:
    page = Page(href="words.html", name=_("Words"), kind=_("Reference"))
    for name, word in spot.desk.content.words.items():
        yield Entry(
            page=page,
            title=sentence(word.word),
            also=" ".join(word.also),
            text=_said(spot, word.means),
            anchor=name,
        )


def _topics(spot: Spot) -> Iterator[Entry]:
    for questions in _open(spot.desk.content.questions):
        name = questions.title or questions.topic.replace("-", " ")
        page = Page(
            href=f"self-tests/{questions.topic}.html", name=sentence(name), kind=_("Self-test")
        )
        yield Entry(page=page, title=page.name)


def _ways_on(spot: Spot) -> Iterator[Entry]:
    """Yield the pages of the navigation, with what people would call their work."""
    called = {
        "today.html": _("what works this shift, which way is open, sterilizer broken, no fuel"),
        "print/index.html": _("print, wall chart, card, log, label, tally, poster"),
        "reference.html": _("look up, values, chemicals, choices, what is overdue"),
    }
    for section, words, address in navigation(spot):
        if section == "amounts":
            continue  # each of its questions is a place of its own
        yield Entry(
            page=Page(href=address, name=words, kind=_("Page")),
            title=words,
            text=called.get(address, ""),
        )


def _standing(spot: Spot) -> Iterator[Entry]:
    """Yield the pages that say how far the handbook can be relied on, and the rules by group."""
    called = (
        ("due.html", _("What is due"), _("overdue, review, look again, expired, dates, calendar")),
        (
            "coverage.html",
            _("Coverage map"),
            _("gaps, not asked, not watched, self-test, observation, checklist, safety step"),
        ),
        ("waivers.html", _("Waivers"), _("waived, exception, not in force, agreed by, ended")),
        ("sources.html", _("Sources"), _("common practice, from memory, unsourced, document")),
        ("visit.html", _("For a visit"), _("audit, auditor, inspection, ministry, proof")),
        ("trainer.html", _("For the trainer"), _("teach, time and heat, steam curve")),
    )
    for address, name, words in called:
        yield Entry(page=Page(href=address, name=name, kind=_("Reference")), title=name, text=words)
    yield from _rules(spot)


def _rules(spot: Spot) -> Iterator[Entry]:
    if spot.desk.rule_cards:
        page = Page(href="rules/index.html", name=_("Rules in force"), kind=_("Reference"))
        yield Entry(page=page, title=page.name, text=_("check, stops, warns, why a build stops"))
    for name, cards in groups(spot.desk.rule_cards).items():
        title = _("Rules: {group}").format(group=group_title(name))
        page = Page(href=f"rules/{name}.html", name=title, kind=_("Rules"))
        yield Entry(page=page, title=title, text=" ".join(each.rule for each in cards))


def _open(questions: Iterable[Any]) -> Iterator[Any]:
    return (each for each in questions if each.pool == "practice")
