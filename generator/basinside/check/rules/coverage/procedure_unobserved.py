"""The rule procedure-unobserved."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.policies import lines_for
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.WARN, of_all=True)
def check_procedure_unobserved(checked: Checked) -> Iterator[Finding]:
    """Each procedure that must be watched has something to watch.

    Why: a competency that nobody can observe is a signature and nothing else. The checklist of a
    procedure is its safety steps and the lines that its observation file adds.
    Bad: a procedure for which the policy asks for practice, without a safety step and without a
    file in quizzes/observations.
    Good: `safety: yes` at what has hurt people; or lines in its observation file.
    Source: CDC and HICPAC, sample competency tool, 2016 (direct observation, line by line).
    """
    handbook = checked.content.handbook
    if handbook is None:
        return
    for name, whole in checked.derived.procedures.items():
        if any(placed.step.safety for placed in whole.steps):
            continue
        written = checked.content.observations.get(name)
        practice = any(line.practice for line in lines_for(handbook, (name,)))
        if practice and not (written and written.lines):
            yield Finding(
                whole.procedure.place,
                f"practice is asked for {name}, and its checklist has no line",
                "Write “safety: yes” at the steps that have hurt people, or an observation file.",
            )
