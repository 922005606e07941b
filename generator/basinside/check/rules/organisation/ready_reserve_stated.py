"""The rule ready-reserve-stated."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.STOP)
def check_ready_reserve_stated(checked: Checked) -> Iterator[Finding]:
    """For each instrument of several patients it stands there how many always lie ready.

    Why: a reserve that nobody counted is the one that was borrowed. None is a number too: then the
    clinic knows that it has none.
    Bad: an instrument that is not under `ready_reserve`.
    Good: `ready_reserve: {bag-mask: 1}`, or `0` where an emergency rule says what is used instead.
    Source: common practice.
    """
    handbook = checked.content.handbook
    if handbook is None:
        return
    for name, instrument in checked.content.instruments.items():
        if instrument.label == "several patients" and name not in handbook.clinic.ready_reserve:
            yield Finding(
                handbook.clinic.place.at("ready_reserve"),
                f"nothing says how many of {instrument.name} lie ready ({name})",
                f"Write “{name}: 1” under “ready_reserve:”, or 0 when there is none.",
                (instrument.place,),
            )
