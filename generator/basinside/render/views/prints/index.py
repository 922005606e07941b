"""The list of all paper: what to print, and where it hangs."""

from __future__ import annotations

from basinside.model.at_hand import route_not_had
from basinside.render.view_types import LinkView, plain
from basinside.render.view_types.prints import PaperGroupView, PaperIndexView, PaperRowView
from basinside.render.views.prints.catalogue import CARDS, LOGS, Print, kind_words, prints
from basinside.render.views.prints.frame import hangs
from basinside.render.views.spot import Spot
from basinside.render.views.titles import procedure_title
from basinside.render.wording import _


def paper_index_view(spot: Spot) -> PaperIndexView:
    """Return the page with every sheet of the handbook."""
    by_kind: dict[str, list[Print]] = {}
    for each in prints(spot):
        by_kind.setdefault(each.kind, []).append(each)
    groups = [
        (_("Cards for the wall"), "cards", CARDS),
        (_("Wall charts"), "wall-charts", ("wall-chart",)),
        (_("Logs and labels"), "logs", (*LOGS, "solution-label")),
        (_("Use tallies"), "use-tallies", ("use-tally",)),
    ]
    return PaperIndexView(
        title=_("Paper"),
        lead=plain(
            _(
                "One sheet each, on A4 or Letter, in black. Take down the old one when you hang"
                " up a new one."
            )
        ),
        groups=(
            *(
                PaperGroupView(
                    anchor=anchor,
                    heading=heading,
                    rows=tuple(
                        _row(spot, each) for kind in kinds for each in by_kind.get(kind, ())
                    ),
                )
                for heading, anchor, kinds in groups
                if any(kind in by_kind for kind in kinds)
            ),
            *_observation(spot),
        ),
        hint=plain(_("Several at once: “basinside print” puts any choice of them into one file.")),
    )


def _row(spot: Spot, one: Print) -> PaperRowView:
    place = hangs(spot, one.kind, one.of)
    if place:
        said = _("Hangs: {place}.").format(place=place)
    elif one.kind in {*CARDS, "wall-chart"}:
        said = _("Hangs nowhere yet.")
    else:
        said = ""
    short = one.short if one.of else kind_words(one.kind)
    return PaperRowView(link=LinkView(text=short, href=spot.link(one.path)), hangs=said)


def _observation(spot: Spot) -> tuple[PaperGroupView, ...]:
    rows = tuple(
        PaperRowView(
            link=LinkView(
                text=procedure_title(whole), href=spot.link(f"print/observation-{name}.html")
            )
        )
        for name, whole in spot.desk.derived.procedures.items()
        if spot.desk.watched(name) and route_not_had(spot.desk.content, whole) is None
    )
    if not rows:
        return ()
    return (PaperGroupView(anchor="observation", heading=_("Observation sheets"), rows=rows),)
