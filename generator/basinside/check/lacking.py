"""What rules say of a run of a pressure vessel that does not look after something."""

from __future__ import annotations

from basinside.check.rule import Finding
from basinside.check.steam_runs import SteamRun
from basinside.model.words import MakesSure


def lacks(run: SteamRun, what: str, *words: MakesSure) -> Finding:
    """Return the finding at the step that starts the time, with the words that would mend it."""
    return Finding(
        run.start.step.place,
        f"{run.name} starts its time in {run.start.step.step}, and {what}",
        f"Say it in a step, and write “makes_sure: [{', '.join(words)}]” there.",
        (run.whole.procedure.place,),
    )
