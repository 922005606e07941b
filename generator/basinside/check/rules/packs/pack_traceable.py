"""The rule pack-traceable."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.records import not_written
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.check.steam_runs import written_in
from basinside.model.derived import PlacedStep, WholeProcedure
from basinside.model.words import Writes
from basinside.problem import Level

_ON_LABEL: Final[tuple[Writes, ...]] = ("load number", "date", "item", "staff code", "use-by date")
"""What makes a pack traceable (CDC dental guideline, 2003, and common practice)."""


@rule(level=Level.STOP)
def check_pack_traceable(checked: Checked) -> Iterator[Finding]:
    """A label leads from the pack to its load, its item, its day and whoever packed it.

    Why: when a load fails, its number is what finds its packs, on the shelf and after use.
    What stands on the label is what steps with `action: label` write: the load number, the date,
    the item (or its unit mark), the staff code and the use-by date. What it is is
    written on the closed pack, before the pack is loaded.
    Bad: `do: Write the date on the tape.`
    Good: `writes: [load number, date, item, staff code, use-by date]`, and a sentence that says
    the same.
    Source: CDC, Guidelines for infection control in dental health-care settings, 2003 (sterilizer,
    load, date); common practice for item, staff code and use-by date.
    """
    for run in checked.steam_runs:
        if run.is_task:
            continue
        labels = [placed for placed in (*run.whole.steps, *run.noted) if placed.action == "label"]
        missing = not_written(_ON_LABEL, written_in(labels))
        own = [placed for placed in labels if placed not in run.noted and placed.writes]
        if missing:
            place = own[0].step.place if own else run.start.step.place
            yield Finding(
                place,
                f"the label of {run.name} has no {listed(missing)}",
                f"Have it written, and write “writes: [{', '.join(missing)}]” at a step with"
                " “action: label”.",
                (run.whole.procedure.place,),
            )
        elif (misplaced := _misplaced(run.whole, own)) is not None:
            yield Finding(
                misplaced.step.place,
                f"{run.name} labels in {misplaced.step.step} a pack that is not closed yet or lies"
                " in the vessel already",
                "Put it after “action: pack” and before “action: load”.",
                (run.whole.procedure.place,),
            )


def _misplaced(whole: WholeProcedure, labels: list[PlacedStep]) -> PlacedStep | None:
    """Return the label that is written before its pack is closed, or once it is loaded."""
    pack = whole.first("pack")
    if pack is None:
        return None
    loaded = whole.first("load") or (whole.level_steps[0] if whole.level_steps else None)
    last = loaded.number if loaded is not None else len(whole.steps)
    for placed in labels:
        says_what = not {"item", "unit mark"}.isdisjoint(placed.writes)
        if says_what and not pack.number < placed.number < last:
            return placed
    return None
