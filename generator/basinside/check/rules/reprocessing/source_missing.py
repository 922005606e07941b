"""The rule source-missing."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.model.words import BASES_WITHOUT_SOURCE
from basinside.problem import Level

_MEND: Final = "Write “source:” with a source id and the place in it, or “basis: common practice”."


@rule(level=Level.STOP)
def check_source_missing(checked: Checked) -> Iterator[Finding]:
    """What claims to rest on a source names it.

    Why: a reader who doubts a value must be able to look it up, and a lead must see at once
    which values were only remembered. `common practice` and `from memory` need no source and are
    shown as what they are.
    Bad: `basis: published` without `source`.
    Good: `basis: published` with `source: iarc-manual p.130`; or `basis: from memory`.
    Source: common practice.
    """
    for name, figure in checked.content.figures.items():
        if figure.source:
            continue
        if figure.basis not in BASES_WITHOUT_SOURCE:
            yield Finding(
                figure.place.at("basis"),
                f"{name} has the basis “{figure.basis}” and names no source",
                "Write “source:” with a source id and the place in it.",
                (figure.place,),
            )
        elif figure.source_says is not None:
            yield Finding(
                figure.place.at("source_says"),
                f"{name} quotes what its source says and names no source",
                "Write “source:” with a source id and the place in it.",
                (figure.place,),
            )
    for name, choice in checked.content.choices.items():
        if not choice.source and choice.basis not in BASES_WITHOUT_SOURCE:
            yield Finding(choice.place, f"the choice {name} {_without(choice.basis)}", _MEND)
        for n, other in enumerate(choice.not_chosen):
            if not other.source and other.basis not in BASES_WITHOUT_SOURCE:
                yield Finding(
                    choice.place.at("not_chosen", n),
                    f"what was not chosen in {name} {_without(other.basis)}",
                    _MEND,
                )


def _without(basis: str | None) -> str:
    if basis is None:
        return "names neither a source nor a basis"
    return f"has the basis “{basis}” and names no source"
