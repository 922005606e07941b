"""The rule tested-before-kept."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.course import after_level, at_step, pack_before_level
from basinside.check.rule import Finding, rule
from basinside.check.task_steps import first_of
from basinside.problem import Level


@rule(level=Level.STOP)
def check_tested_before_kept(checked: Checked) -> Iterator[Finding]:
    """What is kept ready for use was counted, put together and tested before it is put away.

    Why: what lies in the cupboard is taken for good. A test that comes after it is the one that is
    left out in a hurry, and the fault is found at the patient.
    Asked of bare parts after the level: no `count`, `assemble`, `lubricate` or `test` comes after
    the first `store`. What is kept in a pack is put together and tested when the pack is opened,
    after the `store`.
    Bad: dry, count, store, put together, test.
    Good: dry, count, put together, test, label, store.
    Source: common practice.
    """
    for each in checked.sound:
        later = after_level(each)
        store = first_of(later, "store")
        if store is None:
            continue
        if pack_before_level(each) is not None:
            opened = first_of(later[: store.number - later[0].number], "assemble", "test")
            if opened is not None:
                yield at_step(
                    each,
                    opened,
                    f"{each.name} opens in {opened.step.step} the pack that {store.step.step}"
                    " keeps",
                    "Put it after the step that stores.",
                )
            continue
        late = first_of(each.whole.steps[store.number :], "count", "assemble", "lubricate", "test")
        if late is not None:
            yield at_step(
                each,
                late,
                f"{each.name} puts {each.instrument.name} away in {store.step.step} and does"
                f" {late.step.step} only after it",
                "Put it before the step that stores.",
            )
