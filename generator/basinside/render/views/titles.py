"""What a procedure is called, wherever it is named."""

from __future__ import annotations

from basinside.model.derived import WholeProcedure
from basinside.render.wording import _, sentence


def procedure_title(whole: WholeProcedure) -> str:
    """Return the title of a procedure: what is done to which instrument."""
    if whole.procedure.title:
        return whole.procedure.title
    name = whole.instrument.name if whole.instrument else whole.procedure.instrument or ""
    route = whole.route.name if whole.route else whole.procedure.route or ""
    return _("{instrument}: {route}").format(instrument=name, route=route[:1].lower() + route[1:])


def short_title(whole: WholeProcedure) -> str:
    """Return the title of a procedure where its instrument stands above it already."""
    title = procedure_title(whole)
    name = _("{instrument}: {route}").format(
        instrument=whole.instrument.name if whole.instrument else "", route=""
    )
    return sentence(title.removeprefix(name)) if whole.instrument else title
