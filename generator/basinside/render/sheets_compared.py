"""Which paper that hangs says something else in one edition than in another."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from basinside.model.content import Content
from basinside.model.derived import Derived
from basinside.model.handbook import Handbook, Posted
from basinside.render.environment import Theme
from basinside.render.views.learning import observation_sheet_view
from basinside.render.views.prints.catalogue import kind_words, prints
from basinside.render.views.spot import Desk, Spot
from basinside.render.wording import _

OBSERVATION = "observation"

Sheets = Mapping[tuple[str, str], tuple[object, ...]]
"""(kind, what it is about) -> all that stands on its sheets."""


def sheets_of(content: Content, derived: Derived, theme: Theme) -> Sheets:
    """Return what stands on every sheet of a handbook, to be compared with another's."""
    desk = Desk(content=content, derived=derived, theme=theme)
    out: dict[tuple[str, str], list[object]] = {}
    for each in prints(Spot(desk=desk, path="print/index.html")):
        out.setdefault((each.kind, each.of), []).append(each.view(Spot(desk=desk, path=each.path)))
    for name in derived.procedures:
        if desk.watched(name):
            spot = Spot(desk=desk, path=f"print/{OBSERVATION}-{name}.html")
            view = observation_sheet_view(spot, derived.checklists[name])
            out[OBSERVATION, name] = [view]
    return {key: tuple(views) for key, views in out.items()}


def at_the_same_edition(content: Content, of: Handbook) -> Content:
    """Return content with another's edition and dates, so that sheets do not differ by them.

    Where things hang is taken from there too: a sheet names its place.
    """
    handbook = content.handbook
    if handbook is None:
        return content
    same = {
        name: getattr(of, name)
        for name in ("edition", "issued", "review_by", "posted", "responsible", "demonstration")
    }
    return replace(content, handbook=handbook.model_copy(update=same))


def hung_anew(posted: tuple[Posted, ...], old: Sheets, new: Sheets) -> tuple[Posted, ...]:
    """Return the prints that hang somewhere and say something else now, or are no more."""
    return tuple(
        each
        for each in posted
        for key in ((each.print, each.of or ""),)
        if (key in old or key in new) and old.get(key) != new.get(key)
    )


def posted_words(posted: Posted) -> str:
    """Return a print that hangs somewhere: ``Wall chart of bag-mask-boil, beside the stove``."""
    kind = _("Observation sheet") if posted.print == OBSERVATION else kind_words(posted.print)
    if posted.of:
        return _("{print} of {of}, {place}").format(print=kind, of=posted.of, place=posted.at)
    return _("{print}, {place}").format(print=kind, place=posted.at)
