"""Which lines of the policy are about a procedure or a group."""

from __future__ import annotations

from collections.abc import Iterable

from basinside.model.handbook import Handbook, PolicyLine


def lines_for(handbook: Handbook, procedures: Iterable[str]) -> tuple[PolicyLine, ...]:
    """Return the lines that are about procedures, by their ids, their groups or all; in order."""
    wanted = {"all", *procedures}
    groups = {name for name, some in handbook.scopes.items() if wanted.intersection(some)}
    return tuple(each for each in handbook.policy if (wanted | groups).intersection(each.scope))
