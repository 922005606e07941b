"""What the clinic has at hand for a procedure: whether its route is among the clinic's own."""

from __future__ import annotations

from basinside.model.content import Content
from basinside.model.derived import WholeProcedure
from basinside.model.equipment import Route


def route_not_had(content: Content, whole: WholeProcedure) -> Route | None:
    """Return the route of a procedure that the clinic does not name among its own.

    Such a procedure cannot be done here, whatever its instrument stands. None when the clinic has
    the route, and for a procedure that has none.
    """
    had = content.handbook.clinic.has if content.handbook else ()
    return whole.route if whole.route is not None and whole.route.route not in had else None
