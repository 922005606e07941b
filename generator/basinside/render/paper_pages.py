"""The pages of Monday's paper: one for each sheet, and the list of all of them."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Any, Protocol

from basinside.model.entry import Waiver
from basinside.render.views.phrases import page_phrases
from basinside.render.views.prints.catalogue import prints
from basinside.render.views.prints.index import paper_index_view
from basinside.render.views.spot import Desk, Spot

if TYPE_CHECKING:
    from basinside.render.site import PageMaker


class Lists(Protocol):
    """What makes a page of the folder out of its path and its view."""

    def __call__(
        self,
        path: str,
        view_of: Any,
        *,
        section: str = "",
        data: Any = None,
        waived: tuple[Waiver, ...] = (),
        rests_on: Any = (),
    ) -> PageMaker:
        """Return the page, made when it is asked for."""


def paper_pages(desk: Desk, page: Lists, everything: tuple[object, ...]) -> Iterator[PageMaker]:
    """Yield the list of all paper, and each sheet.

    Args:
        desk: the model.
        page: what makes a page.
        everything: the procedures and the instruments.
    """
    content = desk.content
    if content.handbook is None:
        return
    for each in prints(Spot(desk=desk, path="print/index.html")):
        about: tuple[object, ...] = everything
        if each.kind == "wall-chart":
            procedure = content.procedures[each.of]
            about = (procedure, content.instrument_of(procedure))
        elif each.kind == "use-tally":
            about = (content.instruments[each.of],)
        yield page(
            each.path,
            each.view,
            section="paper",
            data=lambda _spot: page_phrases("print"),
            rests_on=(about,),
        )
    yield page(
        "print/index.html",
        paper_index_view,
        section="paper",
        rests_on=(everything, tuple(content.observations.values())),
    )
