"""The rule option-without-reason."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.WARN)
def check_option_without_reason(checked: Checked) -> Iterator[Finding]:
    """Every option, right or wrong, says why; and so does every pair that matters.

    Why: most people learn from the reason, and also those who guessed right.
    Bad: `right: Brush it under water`, and nothing more.
    Good: `because: Water holds back the spray.` below it.
    Source: Hattie and Timperley, The power of feedback, 2007 (from memory).
    """
    for read in checked.items:
        for each in read.options:
            if each.because is None and (each.is_right or each.shows):
                said = f"“{each.text}” of {read.name} does not say why it is"
                said += " right" if each.is_right else " wrong"
                yield Finding(each.option.place, said, "Write “because:”.", (read.item.place,))
        if read.options_only:
            continue
        for matter in read.item.matters:
            if matter.because is None:
                said = f"{read.name} does not say why {matter.first} comes before {matter.then}"
                yield Finding(matter.place, said, "Write “because:”.", (read.item.place,))
        for pair in read.item.pairs:
            for mistake in pair.mistakes:
                if mistake.because is None:
                    said = f"{read.name} does not say why “{mistake.right}” is wrong"
                    yield Finding(mistake.place, said, "Write “because:”.", (read.item.place,))
