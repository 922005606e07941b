"""The rule local-policy-weaker-than-instructions."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.limits import outside
from basinside.check.rule import Finding, rule
from basinside.check.saying import amount
from basinside.model.entry import Decided
from basinside.problem import Level


@rule(level=Level.STOP)
def check_local_policy_weaker_than_instructions(checked: Checked) -> Iterator[Finding]:
    """A value that is weaker than the maker asks for is accepted by two people, for a while.

    Why: a clinic may have a good reason to do otherwise than the instructions ask, but then it
    answers for it. Nobody does so alone, without a day, or for ever. Whatever the basis of the
    value: a published time that is shorter than the maker's is weaker too.
    Bad: `value: 20 min` with `maker_says: {at_least: 30 min, source: larch-instructions §4}`.
    Good: besides, `accepted: {by: infection-prevention lead, second: midwife in charge,
    on: 2026-09-20, until: 2027-03-20}`; or the maker's value.
    Source: common practice.
    """
    for name, figure in checked.content.figures.items():
        asked = figure.maker_says
        if asked is None:
            continue
        said = outside(figure.value, asked)
        if not said:
            continue
        missing = _missing(figure.accepted)
        if missing:
            yield Finding(
                figure.place.at("value"),
                f"{name} is {amount(figure.value)}; the maker {said}"
                f" ({checked.cited(asked.source)}), and {missing}",
                "Keep to the maker, or write “accepted:” with by, second, on and until.",
                (figure.place,),
            )


def _missing(accepted: Decided | None) -> str:
    """Return what an acceptance lacks, or nothing when it counts."""
    if accepted is None:
        return "nobody accepted that by name"
    second = (accepted.second or "").strip().casefold()
    if not second or second == accepted.by.strip().casefold():
        return "one person alone accepted that"
    return "" if accepted.until else "it was accepted without a last day"
