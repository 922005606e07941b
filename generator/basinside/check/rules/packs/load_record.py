"""The rule load-record."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.records import not_written
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.check.steam_runs import written_in
from basinside.model.words import Writes
from basinside.problem import Level

_IN_RECORD: Final[tuple[Writes, ...]] = (
    "load number",
    "date",
    "item",
    "time in",
    "time out",
    "temperature",
    "indicator",
    "result",
    "staff code",
)
"""What a load record holds (rules of two US authorities; number and code are common practice)."""


@rule(level=Level.STOP)
def check_load_record(checked: Checked) -> Iterator[Finding]:
    """Each load is written down: what, when, how long, how hot, and how it went.

    Why: a dental surgery in Oklahoma had a steam sterilizer that nobody tested and no record to
    look into, and about 7,000 patients were told. A record is what a recall begins with.
    What counts is what steps write but for labels: load number, date, item (or unit mark), time
    in, time out, temperature, indicator, result and staff code.
    Bad: `do: Release the packs.` and nothing is written.
    Good: `writes: [load number, date, item, time in, time out, temperature, indicator, result,
    staff code]` at the steps that do so.
    Source: rules of a US county and of the District of Columbia for load records (date, contents,
    time, temperature, indicator); paper 2450 of the CSTE conference, 2013.
    """
    for run in checked.steam_runs:
        steps = [placed for placed in (*run.whole.steps, *run.noted) if placed.action != "label"]
        missing = not_written(_IN_RECORD, written_in(steps))
        if missing:
            yield Finding(
                run.start.step.place,
                f"the record of {run.name} has no {listed(missing)}",
                f"Have it written down, and write “writes: [{', '.join(missing)}]” at that step.",
                (run.whole.procedure.place,),
            )
