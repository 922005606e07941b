"""Waivers on the page they concern: which rule, why, who agreed, until when."""

from __future__ import annotations

from collections.abc import Iterable

from basinside.model.entry import Waiver
from basinside.render.view_types import (
    FactView,
    LinkView,
    PastView,
    Prose,
    SpanView,
    WaiverView,
    plain,
)
from basinside.render.views.rules import bare
from basinside.render.views.spot import Spot, day_words, fact, present
from basinside.render.wording import _


def waiver_views(spot: Spot, waivers: Iterable[Waiver]) -> tuple[WaiverView, ...]:
    """Return the waivers of one entry."""
    return tuple(waiver_view(spot, each) for each in waivers)


def waiver_view(spot: Spot, waiver: Waiver, *, where: LinkView | None = None) -> WaiverView:
    """Return one waiver; ``where`` leads to what it is about, where it stands apart from it."""
    return WaiverView(
        word=_("Waived here") if where is None else "",
        because=spot.prose(waiver.because),
        facts=present(
            _rule(spot, waiver, with_words=where is not None),
            fact(_("Agreed by"), " · ".join(filter(None, (waiver.by, waiver.second)))),
            fact(_("Since"), day_words(waiver.on)),
            fact(_("Until"), day_words(waiver.until) if waiver.until else ""),
        ),
        past=PastView(word=_("Ended"), after=waiver.until.isoformat()) if waiver.until else None,
        where=where,
    )


def _rule(spot: Spot, waiver: Waiver, *, with_words: bool) -> FactView:
    card = spot.desk.rules.get(waiver.rule)
    named = rule_link(spot, waiver.rule)
    return fact(_("Rule"), named, bare(card.says) if card and with_words else "")


def rule_link(spot: Spot, rule: str) -> Prose:
    """Return a rule's id, leading to its page where there is one."""
    card = spot.desk.rules.get(rule)
    if card is None:
        return plain(rule)
    return (SpanView(kind="link", text=rule, href=spot.link(f"rules/{card.group}.html#{rule}")),)
