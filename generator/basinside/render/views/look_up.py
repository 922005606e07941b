"""The way to everything that is looked up; only what exists is listed."""

from __future__ import annotations

from basinside.model.words import BASES_WITHOUT_SOURCE
from basinside.render.view_types import LinkView, ReferenceView, plain
from basinside.render.views.spot import Spot
from basinside.render.wording import _, n_


def reference_view(spot: Spot) -> ReferenceView:
    """Return the first page of the reference."""
    return ReferenceView(
        title=_("Look something up"),
        lead=plain(
            _("The manufacturer's instructions and local policy come first. Here is what we hold.")
        ),
        ways_label=_("Look something up"),
        ways=_ways(spot),
        standing_heading=_("How far to rely on it"),
        standing=_standing(spot),
        more_heading=_("For other readers"),
        more=(
            LinkView(
                text=_("For a visit"),
                href=spot.link("visit.html"),
                note=_("What an auditor asks for: dates, duties, decisions, what hangs where."),
            ),
            LinkView(
                text=_("For the trainer"),
                href=spot.link("trainer.html"),
                note=_("Why time and heat belong together, with numbers worked out here."),
            ),
        ),
    )


def _standing(spot: Spot) -> tuple[LinkView, ...]:
    """Return the ways to what is due, not covered, waived, and to the rules."""
    number = len(spot.desk.waived)
    return tuple(
        LinkView(text=text, href=spot.link(href), note=note)
        for there, text, href, note in (
            (
                True,
                _("What is due"),
                "due.html",
                _("Each day on which something is looked at again; what is overdue."),
            ),
            (
                True,
                _("Coverage map"),
                "coverage.html",
                _("Which steps a self-test asks about, which are watched, and the gaps."),
            ),
            (
                True,
                _("Waivers"),
                "waivers.html",
                n_("One rule rests at a place for a while.", "{n} rules rest for a while.", number)
                if number
                else _("None: no rule rests anywhere."),
            ),
            (
                spot.desk.rule_cards,
                _("Rules in force"),
                "rules/index.html",
                _("What this handbook is held to each time it is made, and why."),
            ),
        )
        if there
    )


def _ways(spot: Spot) -> tuple[LinkView, ...]:
    content = spot.desk.content
    unsourced = sum(each.basis in BASES_WITHOUT_SOURCE for each in content.figures.values())
    values = (_("Values"), _("Every time, strength and limit, with its source."))
    chemicals = (
        _("Chemicals"),
        _("How each can hurt, what to wear, first aid, how to mix and check it."),
    )
    routes = (
        _("Ways of reprocessing"),
        _("What each needs, which level it reaches, for which instruments."),
    )
    choices = (_("Choices"), _("Where sources differ: what we do, who chose it, the other view."))
    words = (_("Words"), _("What the words of this work mean, and what they do not."))
    sources = (_("Sources"), _("The documents behind the values, and where our copy is."))
    without = (
        _("Without a published source"),
        n_(
            "One value is common practice or from memory.",
            "{n} values are common practice or from memory.",
            unsourced,
        ),
    )
    return tuple(
        LinkView(text=text, href=spot.link(href), note=note)
        for there, href, (text, note) in (
            (content.figures, "values.html", values),
            (content.agents, "agents/index.html", chemicals),
            (content.routes, "routes.html", routes),
            (content.choices, "choices.html", choices),
            (content.words, "words.html", words),
            (content.sources, "sources.html", sources),
            (unsourced, "sources.html#unsourced", without),
        )
        if there
    )
