"""The rule print-without-place."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.model.at_hand import route_not_had
from basinside.problem import Level

MOST_NAMED: Final = 3


@rule(level=Level.WARN)
def check_print_without_place(checked: Checked) -> Iterator[Finding]:
    """Each wall chart hangs somewhere, and the handbook says where.

    Why: when an instruction changes, somebody has to find the old sheet and take it down. A chart
    that is written down nowhere stays on the wall, and is followed.
    Bad: a procedure, and no line for its chart under `posted`.
    Good: `- {print: wall-chart, of: bag-mask-boil, at: beside the stove}`
    Source: common practice.
    """
    handbook = checked.content.handbook
    if handbook is None:
        return
    posted = {each.of for each in handbook.posted if each.print == "wall-chart"}
    nowhere = [
        name
        for name, whole in checked.derived.procedures.items()
        if name not in posted and route_not_had(checked.content, whole) is None
    ]
    if not nowhere:
        return
    if not posted:
        more = len(nowhere) - MOST_NAMED
        named = [*nowhere[:MOST_NAMED], *([f"{more} more"] if more > 0 else [])]
        yield Finding(
            handbook.place,
            f"no wall chart hangs anywhere: {listed(named)}",
            "Write where each one hangs, under “posted”.",
        )
        return
    for name in nowhere:
        yield Finding(
            checked.content.procedures[name].place,
            f"the wall chart of {name} hangs nowhere",
            f"Write “- {{print: wall-chart, of: {name}, at: …}}” under “posted” in the handbook.",
            (handbook.place.at("posted"),),
        )
