"""The pages of what is looked up: values, chemicals, choices, rules, what is due, and more."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial
from typing import TYPE_CHECKING, Any

from basinside.render.views.chemicals import agent_view, agents_view
from basinside.render.views.choices import choices_view
from basinside.render.views.coverage import (
    coverage_apart,
    coverage_view,
    covered_by,
    covered_view,
)
from basinside.render.views.due import due_view
from basinside.render.views.incidents import incidents_view
from basinside.render.views.look_up import reference_view
from basinside.render.views.rules import groups, rule_group_view, rules_view
from basinside.render.views.sources import sources_view
from basinside.render.views.spot import Desk, Spot
from basinside.render.views.trade_words import words_view
from basinside.render.views.trainer import trainer_view
from basinside.render.views.values import values_view
from basinside.render.views.visit import visit_view
from basinside.render.views.waived import waivers_view
from basinside.render.views.ways import ways_view

if TYPE_CHECKING:
    from basinside.render.paper_pages import Lists
    from basinside.render.site import PageMaker


def view_about(view_of: Callable[..., Any], *about: Any) -> Callable[[Spot], Any]:
    """Return what makes the view of a page from its spot alone."""
    return lambda spot: view_of(spot, *about)


def reference_pages(desk: Desk, page: Lists, everything: tuple[object, ...]) -> Iterator[PageMaker]:
    """Yield the pages of what is looked up, and what to do when something went wrong.

    Args:
        desk: the model.
        page: what makes a page.
        everything: the procedures and the instruments.
    """
    content = desk.content
    listed = partial(page, section="reference")
    yield listed("reference.html", reference_view)
    yield listed("values.html", values_view, rests_on=(everything,))
    yield listed("sources.html", sources_view)
    if content.choices:
        yield listed("choices.html", choices_view)
    if content.routes:
        yield listed("routes.html", ways_view, rests_on=(everything,))
    if content.words:
        yield listed("words.html", words_view)
    if content.agents:
        yield listed("agents/index.html", agents_view, rests_on=(everything,))
    for name, agent in content.agents.items():
        yield listed(
            f"agents/{name}.html", view_about(agent_view, agent), rests_on=((agent,), everything)
        )
    yield listed("trainer.html", trainer_view)
    watched_and_asked = (
        everything,
        (*content.observations.values(), *content.assessments.values()),
        content.questions,
    )
    yield listed("visit.html", visit_view, rests_on=watched_and_asked)
    yield listed("due.html", due_view, rests_on=watched_and_asked)
    yield listed("waivers.html", waivers_view, rests_on=watched_and_asked)
    yield listed("coverage.html", coverage_view, rests_on=watched_and_asked)
    for name in content.procedures if coverage_apart(desk) else ():
        yield listed(
            f"coverage/{name}.html",
            view_about(covered_view, name),
            rests_on=covered_by(desk, name),
        )
    yield from _rules(desk, listed)
    yield page(
        "incidents.html",
        incidents_view,
        waived=tuple(waiver for each in content.incidents.values() for waiver in each.waive),
    )


def _rules(desk: Desk, listed: partial[PageMaker]) -> Iterator[PageMaker]:
    """Yield the list of rules, and a page for each group of them."""
    if desk.rule_cards:
        yield listed("rules/index.html", rules_view, rests_on=(desk.rule_cards,))
    for name, cards in groups(desk.rule_cards).items():
        yield listed(
            f"rules/{name}.html", view_about(rule_group_view, name, cards), rests_on=(cards,)
        )
