"""The rule single-use-reprocessed."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.NEVER)
def check_single_use_reprocessed(checked: Checked) -> Iterator[Finding]:
    """There is no procedure for an item that is made to be used once.

    Why: its narrow or closed parts cannot be cleaned, and its material was never tested for it.
    What to do with one that lies on the shelf is written at the item as `found_on_the_shelf`.
    Bad: a procedure with `instrument: mucus-extractor`, which has `label: single use`.
    Good: no procedure for it.
    Source: WHO, aide-memoire on injection and device safety (single-use devices are not reused).
    """
    for whole in checked.derived.procedures.values():
        if whole.instrument is not None and whole.instrument.label == "single use":
            yield Finding(
                whole.procedure.place.at("instrument"),
                f"{whole.procedure.procedure} reprocesses {whole.instrument.instrument}, which is"
                " for single use",
                "Delete the procedure, and write at the item what to do with one that is found.",
            )
