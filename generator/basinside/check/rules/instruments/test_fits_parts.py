"""The rule test-fits-parts."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.check.taken_over import taken_over
from basinside.check.tested import fails_unseen
from basinside.model.instrument import Instrument
from basinside.problem import Level


@rule(level=Level.STOP)
def check_test_fits_parts(checked: Checked) -> Iterator[Finding]:
    """Each part that can fail unseen has a line of the function test, and each line a part.

    Why: “it holds” shows that nothing leaks, and says nothing of a relief valve that never blows
    off; that one bursts the lungs of a newborn. A test that was copied from another model tests
    parts that this one has not.
    Asked of parts of `kinds: [valve]`, `relief valve`, `seal`, `light`, `cutting edge`, `gauge` or
    `bag`. A line names the parts whose working it shows in `tests:`.
    Bad: a bag with a relief valve and one line: squeeze it, and it fills again.
    Good: a second line: close the outlet and squeeze; `tests: [relief-valve]`.
    Source: common practice; the maker's instructions.
    """
    for instrument in checked.content.instruments.values():
        if instrument.label == "single use":
            continue
        if lines := _of_nothing(instrument):
            yield from (each for each in lines if not taken_over(instrument, each.place))
        else:
            yield from _untested(instrument)


def _of_nothing(instrument: Instrument) -> list[Finding]:
    """Return the lines that name no part; until they do, nobody can say what is not tested."""
    return [
        Finding(
            line.place,
            f"line {n} of the function test of {instrument.instrument} does not say which part it"
            " shows to work",
            "Name the part in “tests:”.",
            (instrument.place,),
        )
        for n, line in enumerate(instrument.function_test, 1)
        if not line.tests
    ]


def _untested(instrument: Instrument) -> Iterator[Finding]:
    named = {part for line in instrument.function_test for part in line.tests}
    for part in instrument.parts:
        kinds = fails_unseen(part)
        if kinds and part.part not in named:
            yield Finding(
                part.place,
                f"no line of the function test of {instrument.instrument} shows that the"
                f" {part.shown_name} works ({listed(kinds)})",
                "Add a line, or name the part in “tests:” of the line that shows it.",
                (instrument.place,),
            )
