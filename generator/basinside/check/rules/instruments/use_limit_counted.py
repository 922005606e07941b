"""The rule use-limit-counted."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.saying import amount
from basinside.check.tested import fails_unseen
from basinside.model.instrument import Instrument, UseLimit
from basinside.problem import Level


@rule(level=Level.STOP)
def check_use_limit_counted(checked: Checked) -> Iterator[Finding]:
    """A limit of uses is counted for each unit, and a failed test or a sign of wear beats it.

    Why: of 352 people who reused aspirators few counted, and some reached 500 uses; the count of
    an unmarked unit is the count of nobody. The other way round, a unit breaks before its count is
    full.
    An instrument with `use_limit` has `units` with marks, a procedure that has `writes: [uses]`
    and `writes: [unit mark]` in its steps, at least one sign in `retire_when`, and a
    `function_test`.
    Bad: `use_limit` and no step that makes a mark.
    Good: `use_limit`, `units: [A1, A2]`, and a release with `writes: [unit mark, uses]`.
    Source: Eckersberger et al., International Journal of Gynecology and Obstetrics 163(2), 2023;
    Anesthesia and Analgesia 100:590, 2005 (a failed test decides).
    """
    limited = {
        name: limit
        for name, each in checked.content.instruments.items()
        if (limit := each.use_limit) is not None and each.label != "single use"
    }
    if not limited:
        return
    used: set[str] = set()
    counted: set[str] = set()
    marked: set[str] = set()
    for whole in checked.derived.procedures.values():
        name = whole.instrument.instrument if whole.instrument else ""
        if name in limited:
            used.add(name)
            written = checked.written(whole)
            if "uses" in written:
                counted.add(name)
                if "unit mark" in written:
                    marked.add(name)
    for name, limit in limited.items():
        if name not in used:
            continue  # told by instrument-without-procedure
        instrument = checked.content.instruments[name]
        yield from _lacks(
            checked, instrument, limit, counted=name in counted, marked=name in marked
        )


def _lacks(
    checked: Checked, instrument: Instrument, limit: UseLimit, *, counted: bool, marked: bool
) -> Iterator[Finding]:
    figure = checked.figure(limit.at)
    name = instrument.instrument
    most = f"{name} has a limit of {amount(figure.value) if figure else limit.at.figure}, and"
    said: list[tuple[str, str]] = []
    if not instrument.units:
        said.append(("its units have no marks", "Write them in “units:”."))
    if not counted:
        hint = "Write “writes: [unit mark, uses]” at the step that releases it."
        said.append(("no step of its procedures writes the uses down", hint))
    elif instrument.units and not marked:
        hint = "Write “unit mark” in “writes:” of a step of the same procedure."
        said.append(("what writes the uses down does not write of which unit", hint))
    if not any(part.retire_when for part in instrument.parts):
        said.append(("no sign of wear ends its life sooner", "Write “retire_when:” at its parts."))
    if not instrument.function_test and not any(map(fails_unseen, instrument.parts)):
        said.append(("no test beats the count", "Write its “function_test:”."))
    for words, hint in said:
        yield Finding(limit.place, f"{most} {words}", hint, (instrument.place,))
