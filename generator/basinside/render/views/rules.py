"""The rules in force: the list of all, and the page of each."""

from __future__ import annotations

from typing import Final

from basinside.model.rule_card import RuleCard
from basinside.problem import Level
from basinside.render.view_types import (
    LinkView,
    Prose,
    RuleGroupView,
    RuleLineView,
    RuleListView,
    RulesView,
    RuleView,
    SpanView,
    plain,
)
from basinside.render.views.spot import Spot, fact, present
from basinside.render.wording import _, later, n_, sentence

GROUPS: Final[dict[str, str]] = {
    "reprocessing": later("Level, route and what must never meet"),
    "order": later("The order of the steps"),
    "instruments": later("Instruments and their parts"),
    "values": later("Values, sources and choices"),
    "chemicals": later("Chemicals and baths"),
    "people": later("Who does the work"),
    "steam": later("How a steam vessel is run"),
    "packs": later("Packs, indicators and records"),
    "storage": later("Storage, transport and use"),
    "organisation": later("What a clinic has ready"),
    "coverage": later("What nothing covers"),
    "items": later("Questions, assessments and what is watched"),
    "prose": later("How sentences read"),
    "pictures": later("Pictures"),
    "prints": later("What hangs on the wall"),
    "decisions": later("Only when the day is given"),
    "form": later("How files are written"),
}
"""What each group of rules is about."""


def groups(cards: tuple[RuleCard, ...]) -> dict[str, tuple[RuleCard, ...]]:
    """Return the rules by group, groups in the order above, any other behind them."""
    found: dict[str, list[RuleCard]] = {}
    for each in cards:
        found.setdefault(each.group, []).append(each)
    order = [*GROUPS, *found]
    return {name: tuple(found[name]) for name in dict.fromkeys(order) if name in found}


def rules_view(spot: Spot) -> RulesView:
    """Return the list of all rules."""
    return RulesView(
        title=_("Rules in force"),
        lead=plain(
            _(
                "These rules read this handbook each time it is made. What stops it is mended"
                " first, or two people waive it for a while."
            )
        ),
        levels=(
            fact(level_words(Level.NEVER), _("No folder is made, and nobody can waive it.")),
            fact(
                level_words(Level.STOP),
                _("No folder is made; two people can waive it for a while, with a reason."),
            ),
            fact(level_words(Level.WARN), _("The author is told; the folder is made.")),
            fact(level_words(Level.INFO), _("The author is told when asking for everything.")),
        ),
        groups=tuple(
            RuleListView(
                link=LinkView(
                    text=group_title(name),
                    href=spot.link(f"rules/{name}.html"),
                    note=n_("one rule", "{n} rules", len(cards)),
                ),
                rules=tuple(
                    RuleLineView(
                        link=LinkView(
                            text=each.rule,
                            href=spot.link(f"rules/{name}.html#{each.rule}"),
                            note=bare(each.says),
                        ),
                        level=level_words(each.level),
                    )
                    for each in cards
                ),
            )
            for name, cards in groups(spot.desk.rule_cards).items()
        ),
    )


def rule_group_view(spot: Spot, group: str, cards: tuple[RuleCard, ...]) -> RuleGroupView:
    """Return the pages of the rules of one group."""
    return RuleGroupView(
        title=_("Rules: {group}").format(group=group_title(group)),
        lead=plain(
            _("Each says what it asks and why, what breaks it, what keeps it, and who says so.")
        ),
        back=LinkView(text=_("All rules"), href=spot.link("rules/index.html")),
        rules=tuple(
            RuleView(
                anchor=each.rule,
                level=_("{level}; only when the day is given").format(level=level_words(each.level))
                if each.dated
                else level_words(each.level),
                says=typed(each.says),
                more=typed(each.more),
                facts=present(
                    fact(_("Why"), typed(sentence(each.why))),
                    fact(_("Breaks it"), typed(sentence(each.bad))),
                    fact(_("Keeps it"), typed(sentence(each.good))),
                    fact(_("Source"), typed(sentence(each.source))),
                ),
            )
            for each in cards
        ),
    )


def group_title(name: str) -> str:
    """Return what a group of rules is about; its name where nothing else is said."""
    return _(GROUPS[name]) if name in GROUPS else sentence(name)


def level_words(level: Level) -> str:
    """Return what a level does, in a few words."""
    return {
        Level.NEVER: _("Stops always"),
        Level.STOP: _("Stops"),
        Level.WARN: _("Warns"),
        Level.INFO: _("Informs"),
    }[level]


def typed(text: str) -> Prose:
    """Return a text in which what an author types stands between grave accents."""
    return tuple(
        SpanView(kind="typed" if n % 2 else "text", text=each)
        for n, each in enumerate(text.split("`"))
        if each
    )


def bare(text: str) -> str:
    """Return a text without the marks of what is typed."""
    return text.replace("`", "")
