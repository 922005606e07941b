"""The rule needles-reprocessed."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.problem import Level


@rule(level=Level.NEVER)
def check_needles_reprocessed(checked: Checked) -> Iterator[Finding]:
    """No procedure is for a hollow needle, whatever its label says.

    Why: nobody can clean the inside of a needle or look at it, and who tries is pricked. Read from
    the parts: a part with `kinds: [needle]` that a procedure covers.
    Bad: a procedure for an instrument that has a part with `kinds: [needle]`.
    Good: no procedure for that part; needles go into the sharps box at the patient.
    Source: WHO, Best practices for injections and related procedures toolkit, 2010, from memory (a
    new needle for each injection); common practice.
    """
    for whole in checked.derived.procedures.values():
        needles = [part for part in whole.parts if "needle" in part.kinds]
        if needles and whole.instrument:
            names = listed(part.shown_name for part in needles)
            yield Finding(
                whole.procedure.place.at("instrument"),
                f"{whole.procedure.procedure} reprocesses a needle ({names} of"
                f" {whole.instrument.instrument})",
                "Leave it out of “parts:”, and drop needles into the sharps box at the patient.",
            )
