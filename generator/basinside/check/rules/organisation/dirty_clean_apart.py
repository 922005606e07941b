"""The rule dirty-clean-apart."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.WARN)
def check_dirty_clean_apart(checked: Checked) -> Iterator[Finding]:
    """Dirty and clean work are apart: by place, or in one place by time, wiped in between.

    Why: what was just made safe gets germs back from a wet table. In 59 facilities soiled and
    clean things crossed each other's way.
    Bad: no `places`; or a place for `both` that does not say what happens in between.
    Good: `places: [{work: washing, side: dirty}, {work: packing, side: clean}]`; or
    `{work: the only table, side: both, between: Wipe it with chlorine and let it dry.}`
    Source: Fast and others, BMJ Global Health 2017;2(Suppl 4):e000428; common practice.
    """
    handbook = checked.content.handbook
    if handbook is None or not checked.sound:
        return
    places = handbook.clinic.places
    sides = {each.side for each in places}
    for side, other in (("dirty", "clean"), ("clean", "dirty")):
        if not sides & {side, "both"}:
            yield Finding(
                handbook.clinic.place.at("places"),
                f"nothing says where {side} work is done, apart from {other} work",
                f"Write “{{work: ..., side: {side}}}” under “places:”.",
            )
    for each in places:
        if each.side == "both" and each.between is None:
            yield Finding(
                each.place,
                f"{each.work} is dirty and clean in one place, and nothing says what is done in"
                " between",
                "Write “between:” with how it is wiped, and when.",
            )
