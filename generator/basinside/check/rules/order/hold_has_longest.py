"""The rule hold-has-longest."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.course import at_step
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.STOP)
def check_hold_has_longest(checked: Checked) -> Iterator[Finding]:
    """Parts in a chemical bath have a longest time as well as a shortest.

    Why: a set that is forgotten over a meal comes out rusted, swollen or sticky, and looks right.
    The level step of a `kind: chemical` route names it in `hold` as `no_longer_than`. Boiling and
    steam have none: what they spoil they spoil by the number of uses.
    Bad: `hold: {figure: chlorine.hold}`.
    Good: `no_longer_than: {figure: chlorine.longest}` beside it.
    Source: common practice; the label of the product and the maker's instructions.
    """
    for each in checked.sound:
        if each.route.kind != "chemical":
            continue
        for placed in each.level_steps:
            hold = placed.hold
            if hold is not None and hold.no_longer_than is None:
                yield at_step(
                    each,
                    placed,
                    f"{each.name} does not say how long parts may stay in the bath of"
                    f" {placed.step.step} at most",
                    "Write “no_longer_than:” with a value in its “hold:”.",
                    "hold",
                )
