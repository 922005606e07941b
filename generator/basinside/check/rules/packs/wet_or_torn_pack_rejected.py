"""The rule wet-or-torn-pack-rejected."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.lacking import lacks
from basinside.check.rule import Finding, rule
from basinside.check.steam_runs import made_sure
from basinside.problem import Level


@rule(level=Level.STOP)
def check_wet_or_torn_pack_rejected(checked: Checked) -> Iterator[Finding]:
    """A pack that is wet, torn or open when it comes out is set aside.

    Why: germs pass through a wet wrap, and drying it later does not help.
    Bad: unload, then store.
    Good: `do: Wet, torn or open? It failed.` with `makes_sure: [wet or torn set aside]`, after the
    time is over and before the pack is stored.
    Source: CDC, Guideline for disinfection and sterilization in healthcare facilities, 2008 (wet
    packs, from memory for the place in it).
    """
    for run in checked.steam_runs:
        if run.wrapped and "wet or torn set aside" not in made_sure(run.after):
            what = "no step after it sets a wet or torn pack aside"
            yield lacks(run, what, "wet or torn set aside")
