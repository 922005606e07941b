"""The rule stages-complete."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.course import at_procedure
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.model.words import STAGES, StageName
from basinside.problem import Level

ELSEWHERE: Final[frozenset[StageName]] = frozenset({"point of use", "cleaning"})
"""Stages without which moist-until-cleaned and clean-before-level stop the build."""


@rule(level=Level.WARN)
def check_stages_complete(checked: Checked) -> Iterator[Finding]:
    """Each stage of reprocessing has steps, or says why it does not apply.

    Why: what nobody wrote down each person does in their own way: how it is dried, in what it is
    carried, how long it may stand. The ten stages are the headings under which a maker has to
    tell how a device is reprocessed.
    Bad: a procedure that ends with the level and says nothing of drying, storage and transport.
    Good: `- stage: packaging` with `not_applicable: Boiled parts are not wrapped.`
    Source: ISO 17664-1:2021, the headings of its processing instructions.
    """
    for each in checked.sound:
        told = {
            stage.stage
            for stage in each.whole.procedure.stages
            if stage.steps or stage.not_applicable is not None
        }
        missing = [name for name in STAGES if name not in told and name not in ELSEWHERE]
        if missing:
            yield at_procedure(
                each,
                f"{each.name} says nothing of {listed(missing)}",
                "Write its steps, or in “not_applicable:” why there are none.",
            )
