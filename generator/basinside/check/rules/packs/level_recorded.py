"""The rule level-recorded."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked, Sound
from basinside.check.course import at_procedure
from basinside.check.records import not_written
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.model.words import Writes, at_least
from basinside.problem import Level

ALWAYS: Final[tuple[Writes, ...]] = ("item", "staff code")
TIMES: Final[tuple[Writes, ...]] = ("time in", "time out")


@rule(level=Level.STOP)
def check_level_recorded(checked: Checked) -> Iterator[Finding]:
    """Each boiling, bath and wipe is written down: which item, by whom, and how it went.

    Why: when a bath turns out weak, the log is what leads to the items that went through it.
    Without one nobody can say for whom they were used.
    Steps with `action: record` or `release` write the item (or its unit mark) and the staff code;
    from high-level disinfection upwards the time in and the time out too, and for a bath its
    strength. Labels do not count: they leave with the item. Loads of steam are asked by
    load-record.
    Bad: a bath whose procedure ends with `action: store`.
    Good: `action: record` with `writes: [item, strength, time in, time out, staff code]`.
    Source: CDC, Guideline for disinfection and sterilization in healthcare facilities, 2008, on
    high-level disinfection in a bath (results and items logged), from memory; common practice.
    """
    for each in checked.sound:
        if each.route.kind != "steam" and each.level_steps:
            missing = not_written(_needed(each), _recorded(checked, each))
            if missing:
                yield at_procedure(
                    each,
                    f"the log of {each.name} has no {listed(missing)}",
                    f"Have it written down, and write “writes: [{', '.join(missing)}]” at a step"
                    " with “action: record”.",
                )


def _needed(each: Sound) -> tuple[Writes, ...]:
    if not at_least(each.level, "high-level disinfection"):
        return ALWAYS
    strength: tuple[Writes, ...] = ("strength",) if each.route.kind == "chemical" else ()
    return (*ALWAYS, *TIMES, *strength)


def _recorded(checked: Checked, each: Sound) -> set[Writes]:
    return {
        word
        for placed in checked.with_tasks(each.whole)
        if placed.action in {"record", "release"}
        for word in placed.writes
    }
