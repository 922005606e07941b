"""The rule indicator-inside-pack."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.lacking import lacks
from basinside.check.rule import Finding, rule
from basinside.check.steam_runs import made_sure
from basinside.problem import Level


@rule(level=Level.STOP)
def check_indicator_inside_pack(checked: Checked) -> Iterator[Finding]:
    """An indicator lies inside each pack, or beside the parts where nothing is wrapped.

    Why: tape outside shows only that a pack was in the vessel. An indicator inside would have
    caught most of the failed loads that were found in 13 hospitals.
    Bad: fold, tape, load.
    Good: `do: Lay the indicator among the parts.` with `makes_sure: [indicator inside]`, in the
    step that packs or loads. A task that several packs share is not asked: it packs nothing.
    Source: CDC, Guideline for disinfection and sterilization in healthcare facilities, 2008
    (internal and external indicators); Panta and others, PLoS ONE 2019;14(11):e0225595.
    """
    for run in checked.steam_runs:
        if not run.is_task and "indicator inside" not in made_sure((*run.before, run.start)):
            where = "inside the pack" if run.wrapped else "beside the parts"
            yield lacks(run, f"no step before it lays an indicator {where}", "indicator inside")
