"""Waivers on the page they concern: which rule, why, who agreed, until when."""

from __future__ import annotations

from collections.abc import Iterable

from basinside.model.entry import Waiver
from basinside.render.view_types import WaiverView
from basinside.render.views.spot import Spot, day_words, fact, present
from basinside.render.wording import _


def waiver_views(spot: Spot, waivers: Iterable[Waiver]) -> tuple[WaiverView, ...]:
    """Return the waivers of one entry."""
    return tuple(
        WaiverView(
            word=_("Waived here"),
            because=spot.prose(each.because),
            facts=present(
                fact(_("Rule"), each.rule),
                fact(_("Agreed by"), " · ".join(filter(None, (each.by, each.second)))),
                fact(_("Since"), day_words(each.on)),
                fact(_("Until"), day_words(each.until) if each.until else ""),
            ),
        )
        for each in waivers
    )
