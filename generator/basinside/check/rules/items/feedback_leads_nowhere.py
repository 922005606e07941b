"""The rule feedback-leads-nowhere."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.WARN)
def check_feedback_leads_nowhere(checked: Checked) -> Iterator[Finding]:
    """An item leads to where it is taught, and a wrong option says why or which belief it shows.

    `about` names the steps, values, chemicals or incidents to which the page then leads.
    Why: who was told “wrong” and no more will do the same tomorrow at the sink.
    Bad: an item without `about`; a wrong option with neither `because` nor `shows`.
    Good: `about: [bag-mask-silicone-boil/wash]`
    Source: Hattie and Timperley, The power of feedback, 2007 (from memory).
    """
    for read in checked.items:
        if not read.about:
            yield Finding(
                read.item.place,
                f"{read.name} does not say what it is about, so that no link leads to it",
                "Write “about:” with the steps, values or chemicals.",
            )
        for each in read.wrong:
            if each.because is None and each.shows is None:
                yield Finding(
                    each.option.place,
                    f"“{each.text}” of {read.name} is wrong and does not say why",
                    "Write “because:”, and “shows:” with the belief behind it.",
                    (read.item.place,),
                )
