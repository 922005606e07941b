"""The rule bench-wiped-between."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.course import at_procedure
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.WARN)
def check_bench_wiped_between(checked: Checked) -> Iterator[Finding]:
    """Where parts are wiped on a bench, the bench is wiped before clean ones lie on it.

    Why: soiled parts lay there. What goes through a bath or a pot comes out into another place;
    what is only wiped never leaves the bench.
    Asked of `kind: wiping`: a step has `makes_sure: [surface wiped between]`.
    Bad: wipe the handle, wait, dry it, lay it down where it lay.
    Good: the same, and `action: wipe` for the bench while the time runs.
    Source: Fast and others, BMJ Global Health 2017;2(Suppl 4):e000428 (soiled and clean cross each
    other's way); common practice.
    """
    for each in checked.sound:
        wiped = each.route.kind == "wiping" and bool(each.level_steps)
        if wiped and "surface wiped between" not in checked.assured(each.whole):
            yield at_procedure(
                each,
                f"{each.name} does not wipe the bench on which soiled parts lay",
                "Put a step with “action: wipe” and “makes_sure: [surface wiped between]” while the"
                " time runs.",
            )
