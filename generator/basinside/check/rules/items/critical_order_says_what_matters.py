"""The rule critical-order-says-what-matters."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.STOP)
def check_critical_order_says_what_matters(checked: Checked) -> Iterator[Finding]:
    """A critical item that is put in order says which entry must come before which.

    The loader sees to it that entries stand in the order that `matters` asks for.
    Why: without `matters` every two neighbours count, and a slip that hurts nobody fails what is
    critical. Cleaning before disinfecting matters; which of two clean parts is dried first does
    not.
    Bad: `critical: yes` and six entries without `matters`.
    Good: `matters: [{first: wash, then: bath, because: ...}]`
    Source: Yudkowsky, Tumuluru, Casey, Herlich and Ledonne, A patient safety approach to setting
    pass/fail standards for basic procedural skills checklists, 2014 (what is essential is asked
    for by itself).
    """
    for read in checked.items:
        if read.options_only:
            continue
        item = read.item
        if item.critical and item.entries and not item.matters:
            yield Finding(
                item.place.at("entries"),
                f"{read.name} is critical and does not say which entries must keep their order",
                "Write “matters:” with the pairs that must, and why.",
                (item.place,),
            )
